package flownet

// program is a sparse elimination whose order was chosen once. Rows are numbered in the order in
// which they are eliminated; place 0 of the matrix and the last row take what belongs to boundaries.
type program struct {
	a, inv, b []float64
	pivots    []pivot
	below     []below // of all pivots, one after the other
	targets   []int32 // for each pivot, below × below
}

type pivot struct {
	diag         int32
	first, count int32 // in below
	targets      int32 // in targets
}

// below is a row that the pivot's row is subtracted from; the pattern is symmetric, so it is also a
// column of the pivot's row.
type below struct{ row, left, right int32 }

// planner finds the order of elimination and the places that it fills.
type planner struct {
	size  int
	place map[[2]int]int32
	near  []map[int]bool
	order []int
}

func newPlanner(size int) *planner {
	p := &planner{size: size, place: map[[2]int]int32{}, near: make([]map[int]bool, size)}
	for i := range p.near {
		p.near[i] = map[int]bool{}
	}
	return p
}

func (p *planner) join(i, j int) {
	if i != j {
		p.near[i][j], p.near[j][i] = true, true
	}
}

// plan eliminates the node with the fewest neighbors first (the lowest number among equals) and
// returns for each step the neighbors that are left, in ascending order.
func (p *planner) plan() [][]int {
	left := make([]bool, p.size)
	for i := range left {
		left[i] = true
	}
	var rest [][]int
	for len(p.order) < p.size {
		best := -1
		for i := range left {
			if left[i] && (best < 0 || len(p.near[i]) < len(p.near[best])) {
				best = i
			}
		}
		var around []int
		for j := range left {
			if p.near[best][j] {
				around = append(around, j)
			}
		}
		left[best] = false
		for _, i := range around {
			delete(p.near[i], best)
			for _, j := range around {
				p.join(i, j)
			}
		}
		p.order, rest = append(p.order, best), append(rest, around)
	}
	return rest
}

// at gives the place of an entry, making one if there is none.
func (p *planner) at(i, j int) int32 {
	key := [2]int{i, j}
	if k, ok := p.place[key]; ok {
		return k
	}
	k := int32(len(p.place) + 1)
	p.place[key] = k
	return k
}

// compile writes the program down. row[i] is where node i comes in the order.
func (p *planner) compile() (lu program, row []int) {
	rest := p.plan()
	row = make([]int, p.size)
	for k, i := range p.order {
		row[i] = k
	}
	for k, i := range p.order {
		v := pivot{diag: p.at(i, i), first: int32(len(lu.below)), count: int32(len(rest[k])), targets: int32(len(lu.targets))}
		for _, j := range rest[k] {
			lu.below = append(lu.below, below{row: int32(row[j]), left: p.at(j, i), right: p.at(i, j)})
			for _, m := range rest[k] {
				lu.targets = append(lu.targets, p.at(j, m))
			}
		}
		lu.pivots = append(lu.pivots, v)
	}
	lu.a = make([]float64, len(p.place)+1)
	lu.inv = make([]float64, p.size)
	lu.b = make([]float64, p.size+1)
	return lu, row
}

func (p *program) clear() {
	clear(p.a)
	clear(p.b)
}

// solve replaces b by the solution; the last entry, which boundaries share, becomes 0.
func (p *program) solve() {
	a, b := p.a, p.b
	for k := range p.pivots {
		v := &p.pivots[k]
		inv := 1 / a[v.diag]
		p.inv[k] = inv
		rows := p.below[v.first : v.first+v.count]
		t := v.targets
		for i := range rows {
			f := float64(a[rows[i].left] * inv)
			b[rows[i].row] -= float64(f * b[k])
			for j := range rows {
				a[p.targets[t]] -= float64(f * a[rows[j].right])
				t++
			}
		}
	}
	for k := len(p.pivots) - 1; k >= 0; k-- {
		v := &p.pivots[k]
		x := b[k]
		for _, r := range p.below[v.first : v.first+v.count] {
			x -= float64(a[r.right] * b[r.row])
		}
		b[k] = float64(x * p.inv[k])
	}
	b[len(b)-1] = 0
}
