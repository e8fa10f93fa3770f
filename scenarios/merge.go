package scenarios

import "fmt"

// line is a move in words that are equal for moves that do the same. A part that an apparatus may lack
// is not one of them.
func (m *move) line() string {
	return fmt.Sprint(m.Go.Value, "|", m.Set.Value, "|", m.Turn.Value, "|", m.Bring.Value, "|", m.Wait.Value, "|", m.PauseS, "|", m.Say.Value, "|", m.Press.Value,
		"|", m.To.Value, "|", m.Until.Value, "|", m.Watch.Value, "|", m.Value.Value, "|", m.Within, "|", m.OverS, "|", m.GiveUpS, "|", m.If.Value)
}

// merged are the moves of one who does a step with two people's changes to it. ok is false where both
// change the same move, or moves next to one another, in different ways: one cannot do both.
func merged(base, one, other []moveFile) (list []moveFile, ok bool) {
	a, b := kept(base, one), kept(base, other)
	at, ai, bi := 0, 0, 0
	for n := 0; n <= len(base); n++ {
		if n < len(base) && (a[n] < 0 || b[n] < 0) {
			continue // changed or left out by somebody
		}
		aEnd, bEnd := len(one), len(other)
		if n < len(base) {
			aEnd, bEnd = a[n], b[n]
		}
		part, fits := choose(base[at:n], one[ai:aEnd], other[bi:bEnd])
		if !fits {
			return nil, false
		}
		list = append(list, part...)
		if n < len(base) {
			list = append(list, base[n])
			at, ai, bi = n+1, aEnd+1, bEnd+1
		}
	}
	return list, true
}

// choose takes the part that was changed, if only one has changed it or both alike.
func choose(base, one, other []moveFile) ([]moveFile, bool) {
	switch {
	case alike(base, one):
		return other, true
	case alike(base, other), alike(one, other):
		return one, true
	}
	return nil, false
}

func alike(a, b []moveFile) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].V.line() != b[i].V.line() {
			return false
		}
	}
	return true
}

// kept finds for each move of base where it stands in the list that was made from it, in order; -1: it is
// not there. As many as can be are found.
func kept(base, list []moveFile) []int {
	most := make([][]int, len(base)+1) // of base from i and list from k on
	for i := range most {
		most[i] = make([]int, len(list)+1)
	}
	for i := len(base) - 1; i >= 0; i-- {
		for k := len(list) - 1; k >= 0; k-- {
			if base[i].V.line() == list[k].V.line() {
				most[i][k] = most[i+1][k+1] + 1
			} else {
				most[i][k] = max(most[i+1][k], most[i][k+1])
			}
		}
	}
	at := make([]int, len(base))
	i, k := 0, 0
	for i < len(base) {
		switch {
		case k < len(list) && base[i].V.line() == list[k].V.line():
			at[i] = k
			i, k = i+1, k+1
		case k < len(list) && most[i][k+1] >= most[i+1][k]:
			k++
		default:
			at[i] = -1
			i++
		}
	}
	return at
}
