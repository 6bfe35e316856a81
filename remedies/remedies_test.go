package remedies

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"slabwright/causes"
)

// situations draws situations of every mix of states, known and unknown.
func situations(n int) []Situation {
	r := rand.New(rand.NewPCG(11, 12))
	pick := func(words ...string) string { return words[r.IntN(len(words))] }
	maybe := func(low, high float64) *float64 {
		if r.IntN(3) == 0 {
			return nil
		}
		v := low + (high-low)*r.Float64()
		return &v
	}
	var rankings []causes.Ranking
	for _, c := range causes.Cases() {
		rankings = append(rankings, causes.Rank(c.Evidence))
	}
	var all []Situation
	for range n {
		in := Situation{
			Finding: "1", Ranking: rankings[r.IntN(len(rankings))],
			Pattern:  pick("line", "shorts", "grid", "finemap", "coarsemap", "cornerarc", "shatter", "surface-loss", "edge-chips", "step", ""),
			Movement: pick("", "stable", "cyclic", "growing"), Rocking: pick("", "none", "slight", "strong"),
			Hollow: pick("", "none", "thin-sheet", "void-at-edge"), Traffic: pick("", "none", "foot", "cars", "lorries", "hard wheels"),
			Exposure: pick("external", "indoor"), Salt: r.IntN(2) == 0, Clean: r.IntN(5) == 0, Carries: r.IntN(5) == 0,
			Width: maybe(0, 0.008), Step: maybe(0, 0.02), Depth: maybe(0.001, 0.1), Length: maybe(0.1, 20), Area: maybe(0.1, 40),
			Thickness: maybe(0.1, 0.3), LoadTransfer: maybe(0, 1), LoadRatio: maybe(0, 2), AgeDays: maybe(0, 2000), PullOff: maybe(0.2, 2),
			ShrinkageLeft: maybe(0, 5e-4), FeedLength: maybe(1, 15), Now: maybe(0, 30), Coldest: maybe(-20, 10), Hottest: maybe(25, 45),
			UncutLength: maybe(0, 50), FixtureLength: maybe(0, 8), PanelArea: maybe(4, 40), SlabArea: maybe(40, 400),
			Rates: []UnitRate{{"seal", 12}, {"replace", 90}}, Currency: "EUR",
		}
		all = append(all, in)
	}
	return all
}

func find(options []Option, id string) *Option {
	for i := range options {
		if options[i].ID == id {
			return &options[i]
		}
	}
	return nil
}

func TestEveryRemedyHasItsRule(t *testing.T) {
	for _, r := range catalogue {
		if rules[r.ID] == nil || residual[r.ID] == "" {
			t.Errorf("%s lacks a rule or what risk stays", r.ID)
		}
		if words := len(strings.Fields(r.Plain)); words > 30 {
			t.Errorf("%s: plain sentence of %d words", r.ID, words)
		}
	}
	if len(rules) != len(catalogue) {
		t.Errorf("%d rules for %d remedies", len(rules), len(catalogue))
	}
}

func TestOptionsHold(t *testing.T) {
	for n, in := range situations(3000) {
		options := Options(in)
		if len(options) < 4 || find(options, "leave") == nil || find(options, "watch") == nil {
			t.Fatalf("situation %d: leave, watch and two more are always among the options", n)
		}
		recommended := 0
		for _, o := range options {
			if o.Recommended {
				recommended++
				if !o.Fits && o.ID != "watch" {
					t.Errorf("situation %d: %s recommended although it does not fit: %s", n, o.ID, o.Why)
				}
			}
			if o.Why == "" || o.Fits && o.Refused || o.Needed && !o.Fits && o.ID != "watch" {
				t.Errorf("situation %d: %s: why %q fits %v needed %v refused %v", n, o.ID, o.Why, o.Fits, o.Needed, o.Refused)
			}
			if strings.Contains(o.Why+o.When+o.Amount+o.CostText, "%!") || strings.Contains(o.When, "not known") {
				t.Errorf("situation %d: %s: broken text %q %q %q", n, o.ID, o.Why, o.When, o.CostText)
			}
			if o.Cost != nil && (o.Quantity == nil || math.IsNaN(*o.Cost)) {
				t.Errorf("situation %d: %s costs without a quantity", n, o.ID)
			}
		}
		if recommended != 1 || !options[0].Recommended {
			t.Fatalf("situation %d: %d recommended, first is %s", n, recommended, options[0].ID)
		}
	}
}

func TestNothingLocksALiveCrack(t *testing.T) {
	for n, in := range situations(3000) {
		for _, o := range Options(in) {
			switch o.ID {
			case "stitch", "inject", "gravity-resin":
				if in.moves() && !o.Refused {
					t.Errorf("situation %d: %s not refused on a %s, %s crack: %s", n, o.ID, in.Movement, in.Rocking, o.Why)
				}
			case "leave":
				if (in.live() || in.Rocking == "slight") && o.Fits {
					t.Errorf("situation %d: leave fits a live finding", n)
				}
			case "grind":
				if o.Fits && (in.Movement == "growing" || in.Rocking == "strong") {
					t.Errorf("situation %d: grind fits a moving step", n)
				}
			}
		}
	}
}

func TestSequenceIsInOrder(t *testing.T) {
	for n, in := range situations(500) {
		last := 0
		for _, o := range Sequence(Options(in)) {
			if orderOf(o.ID) < last {
				t.Fatalf("situation %d: %s out of order", n, o.ID)
			}
			last = orderOf(o.ID)
		}
	}
}

func TestAnswersHold(t *testing.T) {
	for n, in := range situations(2000) {
		for _, a := range []Answer{Structural(in), Worse(in), Matters(in)} {
			if a.Meaning == "" || a.Text == "" || strings.Contains(a.Text, "%!") {
				t.Errorf("situation %d: %+v", n, a)
			}
			if (a.Verdict == Yes) != (strings.HasPrefix(a.Text, "Yes")) || a.Verdict == CannotTell && len(a.Missing) == 0 {
				t.Errorf("situation %d: verdict %q with text %q, missing %v", n, a.Verdict, a.Text, a.Missing)
			}
			for _, word := range []string{"liable", "at fault", "negligen", "defect", "failure"} {
				if strings.Contains(strings.ToLower(a.Text), word) {
					t.Errorf("situation %d: %q in %q", n, word, a.Text)
				}
			}
		}
		if Structural(in).Verdict == Yes && Matters(in).Verdict != Yes {
			t.Errorf("situation %d: structural but does not matter", n)
		}
	}
}

// textbook returns the situation of a textbook case.
func textbook(id string, change func(*Situation)) Situation {
	for _, c := range causes.Cases() {
		if c.ID == id {
			in := Situation{Finding: c.Site, Ranking: causes.Rank(c.Evidence)}
			for _, o := range c.Evidence.Observations {
				switch o.Variable {
				case "pattern":
					in.Pattern = o.State
				case "movement":
					in.Movement = o.State
				case "rocking":
					in.Rocking = o.State
				case "hollow":
					in.Hollow = o.State
				}
			}
			change(&in)
			return in
		}
	}
	panic("no case " + id)
}

func TestTextbookRemedies(t *testing.T) {
	for _, c := range []struct {
		id, from string
		change   func(*Situation)
		want     string // recommended
		refused  []string
	}{
		{"1", "dry inside, 0.4 mm, at rest, no wheels: leave", func(in *Situation) {
			in.Width, in.Movement, in.Traffic, in.Exposure = new(0.0004), "stable", "foot", "indoor"
		}, "leave", nil},
		{"1", "same, never read: watch first", func(in *Situation) {
			in.Width, in.Traffic, in.Exposure = new(0.0004), "foot", "indoor"
		}, "watch", nil},
		{"1", "1.5 mm under hard wheels at 200 days: semi-rigid filler", func(in *Situation) {
			in.Width, in.Movement, in.Traffic, in.Exposure, in.AgeDays = new(0.0015), "stable", "hard wheels", "indoor", new(200.0)
		}, "fill-semi-rigid", []string{"seal"}},
		{"3", "outside, works with the season: rout and seal, nothing rigid", func(in *Situation) {
			in.Width, in.Movement, in.Traffic, in.Exposure = new(0.0005), "cyclic", "cars", "external"
		}, "seal", []string{"inject", "stitch", "gravity-resin"}},
		{"3", "joints elsewhere were not cut: cut them now", func(in *Situation) {
			in.Width, in.Movement, in.Traffic, in.Exposure, in.UncutLength = new(0.0005), "cyclic", "cars", "external", new(14.0)
		}, "cut-missed-joints", []string{"inject"}},
		{"5", "crazing: leave", func(in *Situation) { in.Exposure, in.Traffic = "indoor", "foot" }, "leave", nil},
		{"6", "curled edge with a void under trucks: support first, no filling, no grinding", func(in *Situation) {
			in.Width, in.Step, in.Traffic, in.Exposure = new(0.0005), new(0.001), "hard wheels", "indoor"
		}, "support", []string{"fill-semi-rigid", "grind", "leave"}},
		{"8", "heave: water and ground first, no jacking, nothing rigid", func(in *Situation) {
			in.Width, in.Step, in.Traffic, in.Exposure = new(0.002), new(0.006), "foot", "external"
		}, "drain", []string{"support", "stitch", "inject", "grind", "leave"}},
		{"9", "six pieces: replace", func(in *Situation) {
			in.PanelArea, in.Traffic, in.LoadRatio = new(25.0), "lorries", new(2.1)
		}, "replace", []string{"restore-dowels", "leave"}},
		{"11", "dusting, 1.5 mm: hardener", func(in *Situation) {
			in.Depth, in.Traffic, in.Exposure = new(0.0015), "hard wheels", "indoor"
		}, "densify", nil},
	} {
		in := textbook(c.id, c.change)
		options := Options(in)
		if options[0].ID != c.want {
			t.Errorf("case %s (%s): recommended %s (%s), want %s", c.id, c.from, options[0].ID, options[0].Why, c.want)
		}
		for _, id := range c.refused {
			if o := find(options, id); o == nil || !o.Refused {
				t.Errorf("case %s (%s): %s is not refused: %+v", c.id, c.from, id, o)
			}
		}
	}
}

func TestStructuralOfCases(t *testing.T) {
	for id, want := range map[string]string{"9": Yes, "8": Yes, "5": No, "1": No} {
		in := textbook(id, func(in *Situation) { in.Traffic = "foot" })
		if a := Structural(in); a.Verdict != want {
			t.Errorf("case %s: %s, want %s", id, a.Text, want)
		}
	}
	in := textbook("1", func(in *Situation) { in.Traffic = "lorries" })
	if a := Structural(in); a.Verdict != CannotTell {
		t.Errorf("lorries on a slab nobody sounded: %s", a.Text)
	}
}

func TestMovementByHand(t *testing.T) {
	in := Situation{FeedLength: new(5.0), ShrinkageLeft: new(2e-4), Expansion: new(1e-5), Now: new(20.0), Coldest: new(0.0), Hottest: new(35.0), Width: new(0.004)}
	m, missing := MovementToCome(in)
	if m == nil {
		t.Fatal(missing)
	}
	// 5·(2e-4 + 1e-5·20) = 2.0 mm; 5·1e-5·15 = 0.75 mm; 2/4 = 0.5.
	for _, c := range []struct{ got, want float64 }{{m.Opening, 0.002}, {m.Closing, 0.00075}, {*m.Strain, 0.5}} {
		if math.Abs(c.got-c.want) > 1e-15 {
			t.Errorf("got %g, want %g", c.got, c.want)
		}
	}
	in.Coldest = nil
	if m, missing := MovementToCome(in); m != nil || len(missing) != 1 {
		t.Errorf("without the coldest temperature: %v %v", m, missing)
	}
}

func TestEarliestByHand(t *testing.T) {
	left := []LeftAt{{0, 4e-4}, {100, 2e-4}, {300, 1e-4}}
	// 15 % of 4 mm is 0.6 mm; over 4 m that is 1.5e-4; half way from day 100 to 300.
	if d, ok := Earliest(left, 4, 0, 0.004, 0.15); !ok || math.Abs(d-200) > 1e-9 {
		t.Errorf("got day %g %v, want 200", d, ok)
	}
	if _, ok := Earliest(left, 4, 0.001, 0.004, 0.15); ok {
		t.Error("the season alone is more than the filler takes, yet a day was found")
	}
	if d, ok := Earliest(left, 0.5, 0, 0.004, 0.15); !ok || d != 0 {
		t.Errorf("already little left: day %g %v, want 0", d, ok)
	}
}

func TestCost(t *testing.T) {
	in := textbook("3", func(in *Situation) {
		in.Width, in.Movement, in.Traffic, in.Exposure, in.Length = new(0.0005), "cyclic", "cars", "external", new(3.5)
		in.Rates, in.Currency = []UnitRate{{"seal", 12}}, "EUR"
	})
	options := Options(in)
	seal := find(options, "seal")
	if seal.Cost == nil || *seal.Cost != 42 || !strings.Contains(seal.CostText, "42 EUR") {
		t.Errorf("3.5 m at 12: %v %q", seal.Cost, seal.CostText)
	}
	if watch := find(options, "inject"); watch.Cost != nil || watch.CostText != "no rate given" {
		t.Errorf("no rate: %v %q", watch.Cost, watch.CostText)
	}
}

func TestCautions(t *testing.T) {
	all := Cautions()
	for _, id := range []string{"silica", "loads", "services", "trip", "chemicals", "voids", "lifting"} {
		found := false
		for _, c := range all {
			found = found || c.ID == id && len(c.Sources) > 0 && c.Text != ""
		}
		if !found {
			t.Errorf("no caution %s", id)
		}
	}
}
