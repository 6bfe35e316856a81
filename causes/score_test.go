package causes

import (
	"math"
	"testing"

	"slabwright/plan"
)

func line(x0, y0, x1, y1 float64) []plan.Point {
	return []plan.Point{{X: x0, Y: y0}, {X: x1, Y: y1}}
}

func crackAt(x, hour float64) ReplayedLine { return ReplayedLine{Path: line(x, 0, x, 4), Hour: hour} }

func TestHitsByHand(t *testing.T) {
	seen := SeenLines{Lines: [][]plan.Point{line(2, 0, 2, 4)}, Until: math.Inf(1)}
	r := Replays{{crackAt(2, 10)}, {crackAt(2.6, 10)}, {{Path: line(0, 2, 4, 2), Hour: 10}}, {}}
	h := r.Hits(seen)
	for i, want := range []float64{1, math.Exp(-0.5), 0, 0} { // on it, one σ away, across it, none
		near(t, "hit", h[i], want, 1e-9)
	}
	seen.Until = 48 // what comes after 1.5 × 48 + 12 h cannot be what was seen
	near(t, "too late", Replays{{crackAt(2, 85)}}.Hits(seen)[0], 0, 0)
	near(t, "just in time", Replays{{crackAt(2, 83)}}.Hits(seen)[0], 1, 1e-9)
	joint := SeenLines{Joint: "J", JointOf: line(0, 0, 0, 4), Until: math.Inf(1)}
	half := Replays{{{Joint: "J", Path: line(0, 0, 0, 1), Hour: 5, Ends: [2]float64{0, 1}}}}
	near(t, "shut share", half.Hits(joint)[0], 0.75, 1e-12)
}

// A cause without which the crack would not have come gains; one that changes nothing
// loses where cracks come by themselves; and neither by more than the cap.
func TestScoreCause(t *testing.T) {
	seen := SeenLines{Lines: [][]plan.Point{line(2, 0, 2, 4)}, Until: math.Inf(1)}
	with, gone := Replays{}, Replays{}
	for range 8 {
		with, gone = append(with, []ReplayedLine{crackAt(2, 10)}), append(gone, nil)
	}
	s := ScoreCause("late-cut", with, gone, seen, 0.1)
	near(t, "because", s.Because, (8+0.05)/9, 1e-12)
	near(t, "for", s.LogRatio, 0.6*math.Log(((8+0.05)/9+0.05)/0.15), 1e-12)
	if same := ScoreCause("late-cut", with, with, seen, 0.5); !(same.LogRatio < 0) || same.LogRatio < -0.6*math.Log(8) {
		t.Errorf("nothing changed: %+v", same)
	}
	if most := ScoreCause("late-cut", with, gone, seen, 0); most.LogRatio > 0.6*math.Log(8)+1e-12 {
		t.Errorf("above the cap: %g", most.LogRatio)
	}
	// the chance of the cause after it, by hand: its odds times the ratio, to the power of the only piece
	e := Evidence{Finding: "F1", Exposure: External, Physics: []Physics{PhysicsOf([]Score{s}, func(Score) string { return "says" })}}
	r := Rank(e)
	p := priorShares(e)[position["late-cut"]]
	odds := p / (1 - p) * math.Exp(s.LogRatio)
	near(t, "late cut", r.Weight("late-cut").P, odds/(1+odds), 1e-9)
	if r.Weight("late-cut").For[0].Text != "says" {
		t.Error("the sentence of the cause is not told")
	}
}

func TestAnywhere(t *testing.T) {
	r := Replays{{crackAt(2, 10)}, {}}
	moved := []SeenLines{{Lines: [][]plan.Point{line(2, 0, 2, 4)}}, {Lines: [][]plan.Point{line(8, 0, 8, 4)}}}
	near(t, "anywhere", r.Anywhere(SeenLines{Until: math.Inf(1)}, moved), 0.25, 1e-9)
}
