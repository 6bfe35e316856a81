package causes

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"
)

// What is called 7 in 10 must come true about 7 times in 10, and it must take the
// tempering to do so: counted in full, the same observations claim too much.
func TestStatedChancesComeTrue(t *testing.T) {
	c, err := Calibrate(context.Background(), 4000, 1)
	if err != nil {
		t.Fatal(err)
	}
	full := 0
	for i, r := range c.Rules {
		t.Logf("%s: worst gap %.3f, first %d, decided %d of which right %d, undecided %d", r.Name, r.Worst, r.First, r.Decided, r.Right, r.Undecided)
		for _, b := range r.Bins {
			t.Logf("  %.1f-%.1f: %6d stated %.3f true %.3f ± %.3f", b.From, b.To, b.Count, b.Stated, b.True, b.Error)
		}
		if r.Bins[9].Enough && r.Bins[5].Enough {
			full++
		}
		if shipped := i == 0; shipped != r.Met && i != 1 {
			t.Errorf("%s: met %v", r.Name, r.Met)
		}
	}
	if full != len(c.Rules) {
		t.Errorf("only %d of %d tables have enough chances in them", full, len(c.Rules))
	}
	if c.Rules[0].Surprise >= c.Rules[1].Surprise {
		t.Errorf("findings set beside each other say no more than each by itself: %.3f and %.3f bits", c.Rules[0].Surprise, c.Rules[1].Surprise)
	}
}

// Where observations are independent given the cause, the site is as the bands say
// and findings share nothing, counting in full is the right rule: the check can be
// met by it, so that its failing above is due to the dependence.
func TestFullWeightsAreRightWithoutDependence(t *testing.T) {
	c, err := calibrate(context.Background(), 1500, 7, dials{}, []rule{{"full", 0, 1, false}})
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range c.Rules[0].Bins {
		if b.Enough && math.Abs(b.Gap) > 0.05+2*b.Error {
			t.Errorf("%.1f-%.1f: stated %.3f, true %.3f ± %.3f", b.From, b.To, b.Stated, b.True, b.Error)
		}
	}
}

// However much observations hang together, each by itself comes as often as its band
// says.
func TestDrawnStatesFollowTheBands(t *testing.T) {
	d := drawer{random: rand.New(rand.NewPCG(3, 4)), dials: dials{all: 0.4, group: 0.7}}
	d.newSite(External, true)
	truth := position["late-cut"]
	v := *FindVariable("location")
	count, n := map[string]int{}, 20000
	for range n {
		count[d.state(v, truth, position["long-panel"], External, true, d.random.NormFloat64(), map[string]float64{})]++
	}
	for _, s := range v.States {
		got, want := float64(count[s])/float64(n), Chance("late-cut", "location", s)
		if math.Abs(got-want) > 4*math.Sqrt(want*(1-want)/float64(n)) {
			t.Errorf("%s: drawn %.4f, band %.4f", s, got, want)
		}
	}
}

func TestCalibrateIsTheSameTwiceAndStops(t *testing.T) {
	a, _ := Calibrate(context.Background(), 20, 1)
	b, _ := Calibrate(context.Background(), 20, 1)
	other, _ := Calibrate(context.Background(), 20, 2)
	if a.Rules[0].Surprise != b.Rules[0].Surprise || a.Rules[0].Surprise == other.Rules[0].Surprise {
		t.Error("the seed does not settle the answer")
	}
	stopped, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Calibrate(stopped, 20, 1); err == nil {
		t.Error("it does not stop")
	}
}
