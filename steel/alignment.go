package steel

import (
	_ "embed"
	"fmt"
	"math"

	"slabwright/internal/table"
)

//go:embed alignment.csv
var alignmentCSV string

var alignment = table.Read("alignment.csv", alignmentCSV)

// AlignmentBar is the bar length, mm, that the rotation limits are stated for.
const AlignmentBar = 450

// Alignment is how a dowel lies, mm.
type Alignment struct {
	Skew      float64 // end over end in plan, over the bar's length
	Tilt      float64 // end over end in height
	SideShift float64 // of its middle along its axis from the joint
	Depth     float64 // of its middle from mid-depth
	Length    float64 // of the bar
}

// Verdict says what to make of a dowel's position.
type Verdict string

// The three verdicts.
const (
	Within  Verdict = "within the limits"
	Outside Verdict = "outside the limits"
	Assess  Verdict = "far outside: assess whether it locks the joint"
)

// CheckAlignment compares a dowel with the limits and says which one it passes. A
// bar must lie along the movement: two bars that are not parallel lock the joint.
//
// Source: FHWA best practice brief on dowel alignment (2007); from memory.
func CheckAlignment(a Alignment) (Verdict, []string) {
	limit := func(what, column string) float64 { return alignment.Number(alignment.Find(what), column) }
	verdict, reasons := Within, []string(nil)
	worse := func(v Verdict, format string, args ...any) {
		if v == Assess || verdict == Within {
			verdict = v
		}
		reasons = append(reasons, fmt.Sprintf(format, args...))
	}
	rotation := math.Hypot(a.Skew, a.Tilt) * AlignmentBar / a.Length
	for _, r := range []struct {
		name  string
		value float64
	}{{"skew", a.Skew}, {"tilt", a.Tilt}} {
		over := math.Abs(r.value) * AlignmentBar / a.Length
		if over > limit("rotation", "accept_mm") {
			worse(Outside, "%s %.0f mm over %d mm is more than %g mm", r.name, over, AlignmentBar, limit("rotation", "accept_mm"))
		}
	}
	if rotation > limit("rotation", "assess_mm") {
		worse(Assess, "rotation %.0f mm over %d mm is more than %g mm", rotation, AlignmentBar, limit("rotation", "assess_mm"))
	}
	if math.Abs(a.SideShift) > limit("side shift", "accept_mm") {
		worse(Outside, "side shift %.0f mm is more than %g mm", math.Abs(a.SideShift), limit("side shift", "accept_mm"))
	}
	if math.Abs(a.Depth) > limit("depth", "accept_mm") {
		worse(Outside, "depth is %.0f mm from mid-depth, more than %g mm", math.Abs(a.Depth), limit("depth", "accept_mm"))
	}
	return verdict, reasons
}

// DepthTolerance returns how far, mm, a dowel may lie from mid-depth by the
// stricter rule: half its diameter.
//
// Source: UFC 3-320-06A, TM 5-809-12; seen in an excerpt.
func DepthTolerance(diameter float64) float64 { return diameter / 2 }
