//go:build !nowindow

package main

import _ "steadyneedle/render/display" // before the window library, see there
