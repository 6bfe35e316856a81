package causes

import (
	"math"
	"testing"
)

// Four corners broken at one crossing are one happening: what is told of one counts for
// the others, and more than between findings that have nothing to do with each other.
func TestGroupsShareTheirEvidence(t *testing.T) {
	clear := Rank(evidence("pattern=line", "location=dowel-end", "dowels=misaligned-or-two-way", "activation=none-near"))
	dim := Rank(evidence("pattern=line", "width=0.3-1"))
	dowels := position["locked-dowels"]
	apart := Beside([]Ranking{clear, dim})
	once := Beside([]Ranking{clear, dim}, []int{0, 1})
	if !(once[1][dowels] > apart[1][dowels] && apart[1][dowels] > dim.Weight("locked-dowels").P) {
		t.Errorf("by itself %.3f, beside %.3f, as one %.3f", dim.Weight("locked-dowels").P, apart[1][dowels], once[1][dowels])
	}
	for j := range once {
		sum := 0.0
		for _, p := range once[j] {
			if math.IsNaN(p) || p < 0 {
				t.Fatalf("chance %g", p)
			}
			sum += p
		}
		near(t, "sum", sum, 1, 1e-9)
	}
}

// What is no commoner elsewhere on the slab than anywhere raises nothing.
func TestNothingLearntRaisesNothing(t *testing.T) {
	told := Rank(evidence("pattern=line", "location=mid-panel", "age=1-12mo"))
	blank := Rank(Evidence{Finding: "F2", Exposure: External, Frost: true})
	beside := Beside([]Ranking{told, blank})
	links := 0.0
	for h, c := range catalogue {
		if c.ID != Other {
			links = math.Max(links, math.Abs(beside[0][h]-told.Weight(c.ID).P))
		}
	}
	if links > 0.06 { // the links between causes alone
		t.Errorf("a finding of which nothing is known moves another by %.3f", links)
	}
}

// A test whose answer takes a year is worth less than the same told at once.
func TestWaitCounts(t *testing.T) {
	r := Rank(evidence("pattern=line", "location=mid-panel"))
	var gauge, openings *Test
	for i := range r.NextTests {
		switch r.NextTests[i].ID {
		case "tell-tale":
			gauge = &r.NextTests[i]
		case "joint-openings":
			openings = &r.NextTests[i]
		}
	}
	if gauge == nil || openings == nil || gauge.WaitDays != 365 {
		t.Fatalf("%+v %+v", gauge, openings)
	}
	bits := func(x *Test) float64 { return x.Worth * classes[x.Class].cost * (1 + x.WaitDays/patience) }
	if !(gauge.Worth < bits(gauge)/10) || !(openings.Worth > gauge.Worth) {
		t.Errorf("a year: %g, a day: %g", gauge.Worth, openings.Worth)
	}
}
