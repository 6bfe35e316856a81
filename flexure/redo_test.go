package flexure

import (
	"math"
	"testing"

	"slabwright/working"
)

// The printed formulas are worked again from their inputs, as a checker with a
// pocket calculator would: what stands on the sheet must give the value beside it.
func TestSheetsCanBeWorkedAgain(t *testing.T) {
	joint := wheelInput()
	joint.Transfer, joint.Radius = 0.3, 0.3
	warm := curlInput()
	warm.Difference, warm.Width = 9, 4.4
	for _, s := range []working.Sheet{WheelWorking(wheelInput()), WheelWorking(joint), CurlWorking(curlInput()), CurlWorking(warm)} {
		for _, l := range s.Lines {
			got, err := l.Rework()
			if err != nil || math.Abs(got-l.Value) > 1e-9*math.Max(1e-12, math.Abs(l.Value)) {
				t.Errorf("%s: %q gives %.12g (%v), sheet says %.12g", l.Symbol, l.Formula, got, err, l.Value)
			}
		}
	}
}
