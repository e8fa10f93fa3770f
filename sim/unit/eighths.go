package unit

import (
	"fmt"
	"math"
)

// Eighths writes a size in inches as the trade does, to the nearest eighth: 2½, ¾, 5.
func Eighths(v float64) string {
	eighths := int(math.Floor(float64(v*8) + 0.5))
	whole, part := eighths/8, [...]string{"", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"}[eighths%8]
	if whole == 0 && part != "" {
		return part
	}
	return fmt.Sprintf("%d%s", whole, part)
}
