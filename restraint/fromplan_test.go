package restraint

import (
	"math"
	"testing"

	"slabwright/plan"
	"slabwright/source"
)

func fact(v float64) *source.Fact { return &source.Fact{Value: v, Known: source.Measured} }

func word(v string) *source.Choice { return &source.Choice{Value: v, Known: source.Measured} }

func TestLinesOfAPlan(t *testing.T) {
	s := plan.Slab{
		Thickness: fact(0.2),
		Joints: []plan.Joint{
			{ID: "plain", Kind: plan.Sawn, Path: path(1, 0, 1, 4), Groove: fact(0.06)},
			{ID: "usual", Kind: plan.Sawn, Path: path(2, 0, 2, 4), Transfer: word("interlock")},
			{ID: "round", Kind: plan.Formed, Path: path(3, 0, 3, 4), Transfer: word("dowelled"), Dowels: &plan.Dowels{Diameter: fact(0.025), Spacing: fact(0.4), Skew: fact(0.02)}},
			{ID: "soft", Kind: plan.Formed, Path: path(4, 0, 4, 4), Dowels: &plan.Dowels{FreeSide: word("yes"), FreeAlong: word("yes")}},
			{ID: "tied", Kind: plan.Formed, Path: path(5, 0, 5, 4), Transfer: word("tied")},
			{ID: "strip", Kind: plan.Isolation, Path: path(6, 0, 6, 4)},
		},
		Fixtures: []plan.Fixture{
			{ID: "P", Kind: plan.Pit, Opening: true, Shape: rectangle(0.2, 0.2, 0.6, 0.6)},
			{ID: "B", Kind: plan.Building, Shape: path(0, 4, 8, 4), Isolated: word("yes")},
			{ID: "D", Kind: plan.Duct, Shape: path(0, 3, 8, 3)},
		},
	}
	taken := UsualTaken(0.15, func(id string) float64 { return map[string]float64{"plain": 9, "usual": 10}[id] })
	l := map[string]Line{}
	for _, v := range LinesOf(s, taken) {
		l[v.ID] = v
	}
	within(t, "share under a groove of 60 mm", l["plain"].Share, 0.7, 1e-12)
	within(t, "share of bending", l["plain"].FaceShare, 0.49, 1e-12)
	within(t, "share under the usual groove", l["usual"].Share, 0.75, 1e-12)
	if l["plain"].Bars != nil || l["plain"].From != 9 || l["usual"].From != 10 || l["plain"].Kind != SawnLine {
		t.Errorf("plain %+v, usual %+v", l["plain"], l["usual"])
	}
	side := DowelSideStiffness(0.025, 200e9, 200e9) / 0.4
	within(t, "round bars along", l["round"].Bars.Along, side, 1e-12)
	within(t, "round bars across", l["round"].Bars.Across, side*4e-4, 1e-12)
	if b := l["soft"].Bars; b.Along != 0 || b.Across != 0 {
		t.Errorf("bars free both ways: %+v", b)
	}
	if l["tied"].Bars.Across < 1e8 || l["strip"].Give != 0.005 || l["strip"].Kind != IsolationLine {
		t.Errorf("tied %+v, strip %+v", l["tied"].Bars, l["strip"])
	}
	holds := HoldsOf(s, taken)
	if len(holds) != 2 || holds[0].Give != 0 || len(holds[0].Path) != 5 || holds[1].Give != 0.005 {
		t.Errorf("holds %+v", holds)
	}
}

// The sheet in plan against converged values of a known problem: 24 m by 15 m with a
// notch and a pit, shrinking by 300 microstrain on springs of 10 MPa per metre. They
// were worked out with high-order elements graded to the corners.
func TestNotchedSlabOnSprings(t *testing.T) {
	m := Model{
		Slab: plan.Slab{Outline: path(0, 0, 24, 0, 24, 13, 21, 13, 21, 15, 0, 15),
			Fixtures: []plan.Fixture{{ID: "P", Opening: true, Shape: rectangle(9, 6, 10.2, 6.9)}}},
		Base:     Base{Stiffness: 10e6, UnitWeight: 24000, Adhesion: 5e6},
		Pours:    []Pour{{Thickness: 0.15, At: shrinking(20e9, 49e6, 300e-6, 1)}},
		Settings: Settings{Size: 0.35, Fine: 0.03},
	}
	r := replay(t, m, 0, 1)
	within(t, "work in the sheet", r.Ledger.Stored, 1066.780, 0.003)
	within(t, "work in the base", r.Ledger.Base, 8080.742, 0.003)
	for _, p := range []struct {
		name           string
		at             plan.Point
		most, xx, yy   float64
		share, nearest float64
	}{
		{"between pit and edge", plan.Point{X: 9.6, Y: 3}, 1.19101, 1.19097, 0.34515, 0.01, 0.35},
		{"between pit and far edge", plan.Point{X: 9.6, Y: 10.95}, 1.17059, 1.16964, 0.43257, 0.01, 0.35},
		{"left of the pit", plan.Point{X: 4.5, Y: 6.45}, 0.74907, 0.74904, 0.54809, 0.01, 0.35},
		{"off the notch", plan.Point{X: 20.7, Y: 12.7}, 0.7173, 0.6918, 0.3972, 0.03, 0.08},
	} {
		xx, yy := stressNear(r.Fields[0], p.at, p.nearest)
		within(t, p.name+", stress xx", xx/1e6, p.xx, p.share)
		if math.Abs(yy/1e6-p.yy) > p.share*p.xx {
			t.Errorf("%s, stress yy: got %.4f, want %.4f MPa", p.name, yy/1e6, p.yy)
		}
	}
}
