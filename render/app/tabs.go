package app

import (
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/sim/world"
)

// tab is one of the buttons for places on the upper strip.
type tab struct {
	key, word, label, about string
	box                     draw.Rect
	on                      bool // it is what shows
	do                      func()
}

// tabs are the places; before them, while a class looks on, the way back to what it is shown.
func (a *App) tabs(s *place) []tab {
	street := s.street != nil
	list := []tab{
		{key: "tab-Cab", word: "Cab", label: "Cab", about: "Go to the driver's seat. Key 1.", on: !street && s.stands == world.Cab, do: func() { s.visit(a, world.Cab) }},
		{key: "tab-Panel", word: "Panel", label: "Panel", about: "Go to the pump panel. Key 2.", on: !street && s.stands == world.Panel, do: func() { s.visit(a, world.Panel) }},
		{key: "tab-Street", word: "Street", label: "Street", on: street, do: func() { s.toStreet(a) },
			about: "The street plan: walk to any place from it, and work what is in reach where you stand. Key 3."},
	}
	if a.class != nil {
		back := tab{key: "tab-Class", word: "‹ Class", label: "Back to the class", about: "What the class is shown, as it was left. Key Esc.", do: func() { a.show(a.class) }}
		list = append([]tab{back}, list...)
	}
	const whole, gap = 288.0, 6.0 // the room is the same with and without a class
	w := math.Floor((whole+gap)/float64(len(list))) - gap
	for i := range list {
		list[i].box = draw.Rect{X: 12 + float64(i)*(w+gap), Y: 11, W: w, H: 38}
	}
	return list
}
