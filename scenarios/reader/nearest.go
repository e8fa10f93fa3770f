package reader

import (
	"fmt"
	"strings"
)

// nearest finds the name that was probably meant by word: at most a third of its letters away.
func nearest(word string, names []string) (string, bool) {
	if len(word) > 64 {
		return "", false
	}
	w := []rune(strings.ToLower(word))
	best, name := len(w)/3+1, ""
	for _, n := range names {
		if d := distance(w, []rune(strings.ToLower(n)), best); d < best || d == best && name == "" {
			best, name = d, n
		}
	}
	if name == "" && len(w) >= 3 {
		for _, n := range names {
			if strings.HasPrefix(n, word) { // a unit or an ending was left out
				return n, true
			}
		}
	}
	return name, name != ""
}

// DidYouMean is the end of a message about an unknown name: a question, or the names if they are few.
func DidYouMean(word string, names []string) string {
	if n, ok := nearest(word, names); ok {
		return "did you mean " + quote(n) + "?"
	}
	if len(names) == 0 {
		return "expected none"
	}
	if len(names) <= 12 {
		return "expected one of " + strings.Join(names, ", ")
	}
	return fmt.Sprintf("none of the %d known names is near it", len(names))
}

// distance counts the letters to change, add, drop or swap with a neighbor to come from a to b.
// Beyond limit it may return any number above limit.
func distance(a, b []rune, limit int) int {
	if len(a)-len(b) > limit || len(b)-len(a) > limit {
		return limit + 1
	}
	var rows [3][]int
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
	}
	for j := range rows[1] {
		rows[1][j] = j
	}
	for i := 1; i <= len(a); i++ {
		two, prev, row := rows[(i-1)%3], rows[i%3], rows[(i+1)%3]
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(prev[j]+1, row[j-1]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], two[j-2]+1)
			}
		}
	}
	return rows[(len(a)+1)%3][len(b)]
}
