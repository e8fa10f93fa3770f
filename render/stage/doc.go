// Package stage is one frame as a list of pictures with places: art that is drawn once and kept, and
// sprites that say where and how turned it stands now. A window uploads each piece of art once and
// draws the list; Compose draws the same list on the CPU, so that pictures and tests need no display.
package stage
