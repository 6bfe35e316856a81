package job

import (
	"math"
	"testing"
)

// A checker with a pocket calculator gets every line of every sheet: formula and
// inputs as printed give the value printed.
func TestEveryWorkingCanBeReworked(t *testing.T) {
	c := demoContent(t)
	lines := 0
	for _, s := range c.Workings {
		for _, l := range s.Lines {
			if l.Formula == "" { // read off the plan: there is nothing to work out
				continue
			}
			lines++
			got, err := l.Rework()
			if err != nil || math.Abs(got-l.Value) > reworkTolerance*math.Max(1e-9, math.Abs(l.Value)) {
				t.Errorf("%s, %s (%s): %s gives %.9g (%v), the sheet says %.9g", s.ID, l.Symbol, l.What, l.Formula, got, err, l.Value)
			}
		}
	}
	if lines < 500 {
		t.Errorf("only %d lines", lines)
	}
}

// reworkTolerance leaves room for nothing but the last bits of other orders of
// working.
const reworkTolerance = 1e-6
