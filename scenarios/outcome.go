package scenarios

import (
	"strings"

	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/judge"
)

// test reads the test of an outcome rule: the judge knows the names and their numbers.
func (b *builder) test(t *testFile) *judge.ForkTest {
	if t == nil || !t.name.Given() {
		return nil
	}
	limits := judge.TestLimits(t.name.Value)
	if limits == nil {
		b.at(t.name, 0, "unknown test %q, %s", t.name.Value, reader.DidYouMean(t.name.Value, judge.TestNames()))
		return nil
	}
	for _, k := range t.node.Keys {
		if k.Text != "name" && !strings.Contains(" "+strings.Join(limits, " ")+" ", " "+k.Text+" ") {
			b.fail(k, "test %s has no number %q, %s", t.name.Value, k.Text, reader.DidYouMean(k.Text, limits))
		}
	}
	return &judge.ForkTest{Name: t.name.Value, Limit: t.limit}
}
