package earlyage

import (
	"context"
	"math"
	"testing"
	"time"
)

// An ordinary run against one with four times the layers and a quarter of the
// steps: temperatures within 0.2 K, opening of both saws and closing within five
// minutes, a closing days later within a thousandth of its time.
func TestAgainstFourTimesFiner(t *testing.T) {
	days := map[string]func(testing.TB) Column{"hot": hot, "mild": mild, "cold": cold}
	for _, name := range []string{"hot", "mild", "cold"} {
		run := func(finer int) *Members {
			c := days[name](t)
			c.Until, c.finer = 168, finer
			m, err := RunMembers(context.Background(), Pour{Column: c, Restraint: usualRestraint(), Count: 1})
			if err != nil {
				t.Fatal(err)
			}
			return m
		}
		usual, fine := run(1), run(4)
		worst, at := 0.0, 0.0
		for hours := 0.5; hours <= 168; hours += 0.5 {
			a, b := usual.Expected().At(hours), fine.Expected().At(hours)
			for _, off := range []float64{a.Surface - b.Surface, a.Mid - b.Mid, a.Bottom - b.Bottom} {
				if math.Abs(off) > worst {
					worst, at = math.Abs(off), hours
				}
			}
		}
		if worst > 0.2 {
			t.Errorf("%s: temperatures up to %.3f K apart, at %.1f h", name, worst, at)
		}
		for _, key := range []string{"ordinary", "early-entry"} {
			saw, _ := SawFor(key, "medium")
			opens := func(m *Members) float64 { return reached(m.Hours, m.Expected().EdgeFc, saw.Edge) }
			a, b := opens(usual), opens(fine)
			if !(math.Abs(a-b) <= 5.0/60) {
				t.Errorf("%s, %s: opens %.3f and %.3f h", name, key, a, b)
			}
			t.Logf("%s, %s: opens %.1f min apart", name, key, 60*(a-b))
		}
		closes := func(m *Members) float64 { return reached(m.Hours, m.members[0].ratio, StressShare) }
		a, b := closes(usual), closes(fine)
		if math.IsNaN(a) != math.IsNaN(b) || math.Abs(a-b) > math.Max(5.0/60, b/1000) {
			t.Errorf("%s: closes %.3f and %.3f h", name, a, b)
		}
		t.Logf("%s: temperatures up to %.3f K apart (%.1f h), closes %.2f h, %.1f min apart", name, worst, at, a, 60*(a-b))
	}
}

// One member for a week on one core. The best of all is reported too: what else
// the machine does only ever adds.
func BenchmarkMember(b *testing.B) {
	c := mild(b)
	c.Until = 168
	c.sampled = c.ask()
	b.ReportAllocs()
	best := math.Inf(1)
	for b.Loop() {
		start := time.Now()
		if _, err := c.Run(context.Background()); err != nil {
			b.Fatal(err)
		}
		best = math.Min(best, time.Since(start).Seconds())
	}
	b.ReportMetric(1000*best, "ms/best")
}

// The window of 200 members over three days on two cores.
func BenchmarkWindow200(b *testing.B) {
	saw, _ := SawFor("ordinary", "medium")
	p := Pour{Column: mild(b), Restraint: usualRestraint(), Count: 200, Cores: 2}
	best := math.Inf(1)
	for b.Loop() {
		start := time.Now()
		if _, err := Window(context.Background(), p, saw, 0.1); err != nil {
			b.Fatal(err)
		}
		best = math.Min(best, time.Since(start).Seconds())
	}
	b.ReportMetric(best, "s/best")
}
