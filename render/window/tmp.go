package window

import _ "github.com/hajimehoshi/ebiten/v2"
