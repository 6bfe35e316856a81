package restraint

import (
	"context"
	"math"
	"testing"
)

// The quick model says of each case what the fine one says: whether it cracks, whether
// joints open, and when first.
func TestQuickAgainstFine(t *testing.T) {
	for _, c := range []struct {
		name string
		of   Model
		days float64
		near float64 // hours
	}{{"row sawn in time", row(7, 5, 12), 90, 2}, {"row sawn late", row(7, 5, 400), 90, 2}, {"column cast in", column(false), 90, 24 * 10}, {"column isolated", column(true), 90, 0},
		{"infill locked", infill(false), 730, 24 * 45}, {"infill free", infill(true), 730, 0}, {"yard", yard(), 1, 2}} {
		hours := UsualHours(24 * c.days)
		fine, quick := replay(t, c.of, hours...), replay(t, c.of.Quick(), hours...)
		t.Logf("%s: %d nodes for %d, %d factorisations for %d, events %d for %d, first %.1f for %.1f, peak %.2f for %.2f", c.name, quick.Nodes, fine.Nodes, quick.Rounds, fine.Rounds,
			len(quick.Events), len(fine.Events), firstHour(quick), firstHour(fine), quick.Peak.Share, fine.Peak.Share)
		if (len(fine.Events) > 0) != (len(quick.Events) > 0) || (count(fine, CrackLine) > 0) != (count(quick, CrackLine) > 0) {
			t.Errorf("%s: quick %d joints and %d cracks, fine %d and %d", c.name, count(quick, SawnLine), count(quick, CrackLine), count(fine, SawnLine), count(fine, CrackLine))
			continue
		}
		if len(fine.Events) > 0 && math.Abs(firstHour(quick)-firstHour(fine)) > c.near {
			t.Errorf("%s: first at hour %.1f, fine %.1f", c.name, firstHour(quick), firstHour(fine))
		}
	}
	if n := replay(t, yard().Quick(), 0, 1).Nodes; n < 600 || n > 1200 {
		t.Errorf("%d points on 350 m²", n)
	}
}

func firstHour(r *Replay) float64 {
	if len(r.Events) == 0 {
		return math.NaN()
	}
	return r.Events[0].Hour
}

// Members that share one net replay as they would alone.
func TestMembersShareANet(t *testing.T) {
	m := yard().Quick()
	alone, of := m.Spread(3, 5, Doubt{Strain: 0.1, Friction: 0.2}), m.Spread(3, 5, Doubt{Strain: 0.1, Friction: 0.2})
	for i := range 3 {
		single := alone(i)
		single.laid = nil
		a, err := single.Replay(context.Background(), UsualHours(72), nil, nil)
		b, err2 := of(i).Replay(context.Background(), UsualHours(72), nil, nil)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		if len(a.Events) != len(b.Events) || a.Ledger != b.Ledger {
			t.Errorf("member %d: %d events and %+v, alone %d and %+v", i, len(b.Events), b.Ledger, len(a.Events), a.Ledger)
		}
	}
}

// A member of a sample, over the first 90 days.
func BenchmarkQuick(b *testing.B) {
	for name, m := range map[string]Model{"yard": yard(), "row": row(14, 5, 12)} {
		b.Run(name, func(b *testing.B) {
			member := m.Quick().Spread(8, 3, Doubt{Strain: 0.1, Strength: 0.1, Friction: 0.3})
			hours := UsualHours(24 * 90)
			nodes, rounds, events, i := 0, 0, 0, 0
			for b.Loop() {
				r, err := member(i%8).Replay(context.Background(), hours, nil, nil)
				if err != nil {
					b.Fatal(err)
				}
				nodes, rounds, events = nodes+r.Nodes, rounds+r.Rounds, events+len(r.Events)
				i++
			}
			b.ReportMetric(float64(nodes)/float64(i), "nodes")
			b.ReportMetric(float64(rounds)/float64(i), "rounds")
			b.ReportMetric(float64(events)/float64(i), "events")
		})
	}
}
