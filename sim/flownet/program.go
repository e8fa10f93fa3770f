package flownet

// program is a sparse elimination whose order was chosen once. The nodes keep the matrix's diagonal and the
// right side; place 0 of the rest takes what belongs to boundaries. Places are kept as pointers: their number
// is settled, and an index would be checked each time.
type program struct {
	a      []float64 // the matrix beside its diagonal
	pivots []pivot
}

type pivot struct {
	diag, side *float64
	inv        float64
	below      []below
	only       *below // where there is but one, as nearly everywhere: most lays branch, and never close
}

// below is a row that the pivot's row is subtracted from; the pattern is symmetric, so it is also a
// column of the pivot's row.
type below struct {
	side, left, right *float64
	targets           []*float64 // for each row below, in this one
}

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

// compile writes the program down for the free nodes, which keep the matrix's diagonal and the right side.
func (p *planner) compile(free []*Node) (lu program) {
	rest := p.plan()
	for k, i := range p.order {
		for _, j := range rest[k] {
			p.at(j, i)
			p.at(i, j)
			for _, m := range rest[k] {
				if m != j {
					p.at(j, m)
				}
			}
		}
	}
	lu.a = make([]float64, len(p.place)+1)
	place := func(i, j int) *float64 {
		if i == j {
			return &free[i].store.diag
		}
		return &lu.a[p.at(i, j)]
	}
	for k, i := range p.order {
		v := pivot{diag: place(i, i), side: &free[i].store.side}
		for _, j := range rest[k] {
			r := below{side: &free[j].store.side, left: place(j, i), right: place(i, j)}
			for _, m := range rest[k] {
				r.targets = append(r.targets, place(j, m))
			}
			v.below = append(v.below, r)
		}
		if len(v.below) == 1 {
			v.only = &v.below[0]
		}
		lu.pivots = append(lu.pivots, v)
	}
	return lu
}

func (p *program) clear() {
	clear(p.a)
}

// solve replaces the right side by the solution.
func (p *program) solve() {
	for k := range p.pivots {
		v := &p.pivots[k]
		v.inv = 1 / *v.diag
		if r := v.only; r != nil {
			if f := float64(*r.left * v.inv); f != 0 {
				*r.side -= float64(f * *v.side)
				*r.targets[0] -= float64(f * *r.right)
			}
			continue
		}
		for i := range v.below {
			r := &v.below[i]
			f := float64(*r.left * v.inv)
			if f == 0 {
				continue // what would join the two is shut
			}
			*r.side -= float64(f * *v.side)
			for j, t := range r.targets[:len(v.below)] {
				*t -= float64(f * *v.below[j].right)
			}
		}
	}
	for k := len(p.pivots) - 1; k >= 0; k-- {
		v := &p.pivots[k]
		x := *v.side
		if r := v.only; r != nil {
			*v.side = float64((x - float64(*r.right**r.side)) * v.inv)
			continue
		}
		for i := range v.below {
			x -= float64(*v.below[i].right * *v.below[i].side)
		}
		*v.side = float64(x * v.inv)
	}
}
