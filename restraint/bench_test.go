package restraint

import (
	"context"
	"math"
	"testing"

	"slabwright/plan"
)

// yard is a slab of 350 m² in three strips with dowelled joints, a pit and a column
// cast in, placed 0, 2.5 and 5.5 hours from the start and sawn the next morning.
func yard() Model {
	pit, post := rectangle(7, 7.4, 8.8, 8.6), rectangle(12.3, 2.6, 12.7, 3)
	m := Model{
		Slab: plan.Slab{
			Outline:  path(0, 0, 18, 0, 18, 0.8, 19.2, 0.8, 19.2, 0, 25.2, 0, 25.2, 11, 15, 11, 15, 16, 0, 16),
			Fixtures: []plan.Fixture{{ID: "PIT", Shape: pit, Opening: true}, {ID: "COL", Shape: post, Opening: true}},
		},
		Base: Base{Stiffness: 100e6, Friction: 1.5, UnitWeight: 24000},
		Pours: []Pour{
			{ID: "A", Area: rectangle(0, 0, 25.2, 5.5), Thickness: 0.18, At: hot(6)},
			{ID: "B", Area: rectangle(0, 5.5, 25.2, 11), Thickness: 0.18, At: hot(8.5)},
			{ID: "C", Area: rectangle(0, 11, 15, 16), Thickness: 0.18, At: hot(11.5)},
		},
		Holds: []Hold{{ID: "PIT", Path: append(pit, pit[0])}, {ID: "COL", Path: append(post, post[0])},
			{ID: "BLD", Path: path(0, 16, 15, 16), Give: 0.012}},
		Settings: Settings{Scatter: 0.1, Seed: 5},
	}
	bars := &Bars{Along: DowelSideStiffness(0.025, 407e9, 200e9) / 0.3, Clear: 0.1}
	m.Lines = []Line{{ID: "FJ1", Kind: FormedLine, Path: path(0, 5.5, 25.2, 5.5), Bars: bars}, {ID: "FJ2", Kind: FormedLine, Path: path(0, 11, 15, 11), Bars: bars}}
	sawn := func(id string, x, y0, y1 float64) {
		m.Lines = append(m.Lines, Line{ID: id, Kind: SawnLine, Path: path(x, y0, x, y1), From: 22, Share: 0.745, FaceShare: 0.555, Bars: bars})
	}
	for i, x := range []float64{5, 10, 15, 20} {
		sawn("SA"+string(rune('1'+i)), x, 0, 5.5)
		sawn("SB"+string(rune('1'+i)), x, 5.5, 11)
		if x < 15 {
			sawn("SC"+string(rune('1'+i)), x, 11, 16)
		}
	}
	return m
}

func twoYears() []float64 {
	return append(UsualHours(24*90), 24*120, 24*180, 24*300, 24*500, 24*730)
}

// Sawn only the morning after, corners of the pit crack in the first night; the column
// cast in cracks as the slab dries; joints open in between; the work balances.
func TestYard(t *testing.T) {
	m := yard()
	m.Settings.Size, m.Settings.Scatter = 0.7, 0
	r := replay(t, m, UsualHours(24*120)...)
	describe(t, r)
	first := func(near float64, places ...plan.Point) float64 {
		hour := math.Inf(1)
		for _, e := range r.Events {
			for _, p := range places {
				if _, _, d := plan.Polyline(e.Path).Nearest(p); e.Kind == CrackLine && d < near {
					hour = math.Min(hour, e.Hour)
				}
			}
		}
		return hour
	}
	if hour := first(0.3, rectangle(7, 7.4, 8.8, 8.6)...); hour > 22 {
		t.Errorf("corners of the pit crack at hour %.0f", hour)
	}
	if hour := first(0.5, plan.Point{X: 12.5, Y: 2.8}); math.IsInf(hour, 1) {
		t.Error("no crack at the column")
	}
	if count(r, SawnLine) < 2 {
		t.Errorf("%d joints opened", count(r, SawnLine))
	}
	if l := r.Ledger; math.Abs(l.Left) > 0.02*l.Supplied {
		t.Errorf("%.3g J of %.3g are not accounted for", l.Left, l.Supplied)
	}
}

// The whole of two years, with all that cracks.
func BenchmarkYard(b *testing.B) {
	m, hours := yard(), twoYears()
	nodes, rounds := 0, 0
	for b.Loop() {
		r, err := m.Replay(context.Background(), hours, nil, nil)
		if err != nil {
			b.Fatal(err)
		}
		nodes, rounds = r.Nodes, r.Rounds
	}
	b.ReportMetric(float64(nodes), "nodes")
	b.ReportMetric(float64(rounds), "rounds")
}
