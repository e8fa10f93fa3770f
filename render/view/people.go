package view

import "steadyneedle/sim/world"

// InTheWay tells, in a sentence each, who of the people in the street stands where water that is let go
// could strike them, as far as it is seen from where one is.
func InTheWay(e *Eyes, people []world.Person) []string {
	if e.Signal("stage") != 3 { // the apparatus is not at the hydrant yet
		return nil
	}
	var list []string
	for i := range people {
		if at := e.Signal(people[i].ID + "_at"); at >= 2 { // away and clear call for nothing
			list = append(list, people[i].Name+" stands "+world.Stands[int(at)]+".")
		}
	}
	return list
}
