package view

import "steadyneedle/render/draw"

// Note explains a thing on a page that is looked at, not worked: a gauge, a lamp, a part of the plan.
type Note struct {
	Box         draw.Rect
	Title, Text string
}
