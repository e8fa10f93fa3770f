package main

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"

	"steadyneedle/scenarios"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/proof"
)

// caseMaker reads what one case needs. Each case has a drill of its own: they are tried at once.
type caseMaker func() (proof.Case, error)

// drillCases are all cases of one drill.
type drillCases struct {
	rules, broken []string
	makers        []caseMaker
}

// amount is how much of a drill's proof is worked.
type amount struct {
	legal []uint64 // seeds of legal variations
	pairs int      // attempts with two mistakes; negative: all that can be made, in each variant
	part  part
}

// part is every of'th case from the nth on; the zero part is all of them.
type part struct{ n, of int }

func (p part) holds(i int) bool { return p.of == 0 || i%p.of == p.n-1 }

// casesOf lists the cases of a drill: each operator who errs, legal variations of the clean run, one for
// each seed, and pairs of operators who err. Where an operator asks for no variant, variants take turns.
func casesOf(s *scenarios.Shelf, list *scenarios.Listing, name string, much amount) (*drillCases, error) {
	d, err := s.Drill(name, scenarios.Options{Seed: 1})
	if err != nil {
		return nil, err
	}
	variants, err := s.Variants(name)
	if err != nil {
		return nil, err
	}
	c := &drillCases{}
	for i := range d.Rules {
		c.rules = append(c.rules, d.Rules[i].ID)
	}
	turn := func(i int) string {
		if len(variants) == 0 {
			return ""
		}
		return variants[i%len(variants)]
	}
	var faulty []scenarios.OperatorItem
	clean := false
	var makers []caseMaker
	for _, o := range list.Operators {
		switch {
		case o.Drill != name:
		case o.Breaks == "":
			clean = clean || o.Name == "clean"
		default:
			c.broken = append(c.broken, o.Breaks)
			makers = append(makers, singleFault(s, o, turn(len(faulty))))
			faulty = append(faulty, o)
		}
	}
	if !clean && len(much.legal) > 0 {
		return nil, fmt.Errorf("drill %s has no operator clean to vary", name)
	}
	for _, seed := range much.legal {
		makers = append(makers, legalRun(s, name, seed))
	}
	pairs, err := pairsOf(s, faulty, much.pairs)
	if err != nil {
		return nil, err
	}
	for i, p := range pairs {
		for _, v := range p.variants(variants, much.pairs < 0, turn(i)) {
			makers = append(makers, pairOf(s, p.one, p.other, v))
		}
	}
	for i := range makers {
		if much.part.holds(i) {
			c.makers = append(c.makers, makers[i])
		}
	}
	return c, nil
}

func singleFault(s *scenarios.Shelf, o scenarios.OperatorItem, variant string) caseMaker {
	return func() (proof.Case, error) {
		opts, err := s.Conditions(o.Drill, o.Name, scenarios.Options{})
		if err != nil {
			return proof.Case{}, err
		}
		d, err := under(s, o.Drill, opts, variant)
		if err != nil {
			return proof.Case{}, err
		}
		script, err := s.Script(d, o.Name)
		if err != nil {
			return proof.Case{}, err
		}
		return proof.Case{Kind: proof.Fault, Name: o.Name, Drill: d, Script: script, Breaks: []string{o.Breaks},
			Hands: operator.Hands{Speed: 1, Seed: d.Setup.Seed}}, nil
	}
}

// under reads a drill with what its operators ask for; what they leave open is seed 1 and the given
// variant.
func under(s *scenarios.Shelf, name string, o scenarios.Options, variant string) (*drill.Drill, error) {
	if o.Seed == 0 {
		o.Seed = 1
	}
	if o.Variant == "" {
		o.Variant = variant
	}
	return s.Drill(name, o)
}

func legalRun(s *scenarios.Shelf, name string, seed uint64) caseMaker {
	return func() (proof.Case, error) {
		d, script, err := s.DrillFor(name, "clean", scenarios.Options{Seed: seed})
		if err != nil {
			return proof.Case{}, err
		}
		return proof.Case{Kind: proof.Legal, Name: fmt.Sprintf("legal variation %d", seed), Drill: d, Script: script,
			Hands: proof.LegalHands(seed)}, nil
	}
}

// pair is two operators who err, and what they ask of the drill.
type pair struct {
	one, other scenarios.OperatorItem
	asks       scenarios.Options
}

// variants in which a pair is tried: the one that its operators ask for, else every one or the one whose
// turn it is.
func (p *pair) variants(all []string, every bool, turn string) []string {
	if every && p.asks.Variant == "" && len(all) > 0 {
		return all
	}
	return []string{turn}
}

// pairsOf draws n pairs of operators whose mistakes can be made in one attempt, or lists all of them,
// every other one in the same step as long as there are such pairs. The draw is the same every time.
func pairsOf(s *scenarios.Shelf, faulty []scenarios.OperatorItem, n int) ([]pair, error) {
	near, far, err := nearAndFar(s, faulty)
	if err != nil {
		return nil, err
	}
	draw := rand.New(rand.NewPCG(1, 1))
	for _, list := range [][]pair{near, far} {
		draw.Shuffle(len(list), func(i, k int) { list[i], list[k] = list[k], list[i] })
	}
	var list []pair
	for (n < 0 || len(list) < n) && len(near)+len(far) > 0 {
		from := &far
		if len(near) > 0 && (len(list)%2 == 0 || len(far) == 0) {
			from = &near
		}
		p := (*from)[0]
		*from = (*from)[1:]
		p.asks, err = s.CanPair(p.one.Drill, p.one.Name, p.other.Name)
		switch {
		case errors.Is(err, scenarios.ErrApart):
		case err != nil:
			return nil, err
		default:
			list = append(list, p)
		}
	}
	return list, nil
}

// nearAndFar lists all pairs that break two rules: those in the same step, and the others.
func nearAndFar(s *scenarios.Shelf, faulty []scenarios.OperatorItem) (near, far []pair, err error) {
	touched := make([][]string, len(faulty))
	for i, o := range faulty {
		if touched[i], err = s.Touches(o.Drill, o.Name); err != nil {
			return nil, nil, err
		}
	}
	for i := range faulty {
		for k := i + 1; k < len(faulty); k++ {
			if faulty[i].Breaks == faulty[k].Breaks {
				continue
			}
			p := pair{one: faulty[i], other: faulty[k]}
			if slices.ContainsFunc(touched[i], func(step string) bool { return slices.Contains(touched[k], step) }) {
				near = append(near, p)
			} else {
				far = append(far, p)
			}
		}
	}
	return near, far, nil
}

func pairOf(s *scenarios.Shelf, one, other scenarios.OperatorItem, variant string) caseMaker {
	return func() (proof.Case, error) {
		opts, err := s.PairConditions(one.Drill, one.Name, other.Name, scenarios.Options{})
		if err != nil {
			return proof.Case{}, err
		}
		d, err := under(s, one.Drill, opts, variant)
		if err != nil {
			return proof.Case{}, err
		}
		script, err := s.PairScript(d, one.Name, other.Name)
		if err != nil {
			return proof.Case{}, err
		}
		return proof.Case{Kind: proof.Pair, Name: one.Name + " and " + other.Name, Drill: d, Script: script,
			Breaks: []string{one.Breaks, other.Breaks}, Hands: operator.Hands{Speed: 1, Seed: d.Setup.Seed}}, nil
	}
}
