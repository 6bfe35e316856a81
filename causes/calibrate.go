package causes

import (
	"context"
	"math"
	"math/rand/v2"
)

// Calibration sets stated chances beside how often they came true, over invented
// jobs whose causes are known.
type Calibration struct {
	Jobs     int            `json:"jobs"`
	Findings int            `json:"findings"`
	Seed     uint64         `json:"seed"`
	Rules    []RuleRecord   `json:"rules"` // the ranking's own rule first
	Allowed  float64        `json:"allowed"`
	Draws    []DrawnSetting `json:"draws"`
}

// DrawnSetting is one setting of the invented jobs, for the record.
type DrawnSetting struct {
	What  string  `json:"what"`
	Value float64 `json:"value"`
}

// RuleRecord is how one way of weighing did.
type RuleRecord struct {
	Name       string        `json:"name"`
	Dependence float64       `json:"dependence"`
	Companion  float64       `json:"companion"`
	Bins       []Reliability `json:"bins"`
	Worst      float64       `json:"worst"` // largest gap of a bin with enough chances in it
	Met        bool          `json:"met"`   // no such gap above what is allowed
	First      int           `json:"first"` // findings whose planted cause came first
	Decided    int           `json:"decided"`
	Right      int           `json:"right"` // of those decided, led by the planted cause or one of two that act together
	Undecided  int           `json:"undecided"`
	Surprise   float64       `json:"surprise_bits"` // mean of -log2 of the chance given to the planted cause
}

// Reliability is one row of the table: all chances stated between two bounds.
type Reliability struct {
	From   float64 `json:"from"`
	To     float64 `json:"to"`
	Count  int     `json:"count"`
	Stated float64 `json:"stated"` // mean
	True   float64 `json:"true"`   // share that came true
	Error  float64 `json:"error"`  // standard error of that share
	Gap    float64 `json:"gap"`
	Enough bool    `json:"enough"`
}

const (
	allowedGap  = 0.05
	enoughInBin = 150 // chances, so that the standard error is at most about 0.04
)

// rule is one way of weighing.
type rule struct {
	name                  string
	dependence, companion float64
	together              bool // the findings of a slab explain each other
}

// rulesCompared: the rule of [Rank] with the findings set beside each other, the same
// for each finding by itself, and the weights that take every observation as
// independent of the others.
var rulesCompared = []rule{
	{"as ranked, findings beside each other", dependence, companion, true},
	{"as ranked, each finding by itself", dependence, companion, false},
	{"untempered: every observation counted in full", 0, 1, false},
}

// Calibrate invents jobs with known causes and asks of each way of weighing how often
// what it calls 7 in 10 is so. It tells whether the chances are consistent with the
// bands and with observations that hang together; it cannot tell whether the bands
// are right in the field. The same seed gives the same answer.
func Calibrate(ctx context.Context, jobs int, seed uint64) (Calibration, error) {
	return calibrate(ctx, jobs, seed, usualDials, rulesCompared)
}

func calibrate(ctx context.Context, jobs int, seed uint64, turned dials, rules []rule) (Calibration, error) {
	d := drawer{random: rand.New(rand.NewPCG(seed, 0x5bd1e995)), dials: turned}
	c := Calibration{Jobs: jobs, Seed: seed, Allowed: allowedGap, Draws: []DrawnSetting{
		{"correlation of oddness between observations", turned.all},
		{"the same within a group", turned.group},
		{"share of observations written down as the look-alike would show them", turned.misread},
		{"scatter of the bands from site to site, standard deviation of ln", turned.rows},
		{"the same of the prior odds", turned.odds},
		{"chance that a finding shares the cause of another", turned.same},
		{"chance that it has one which that brings about", turned.brought},
	}}
	tallies := make([]tally, len(rules))
	for range jobs {
		if err := ctx.Err(); err != nil {
			return c, err
		}
		j := d.job()
		c.Findings += len(j.Findings)
		for i, r := range rules {
			tallies[i].count(r.chances(j.Findings), j.Truth)
		}
	}
	for i, r := range rules {
		c.Rules = append(c.Rules, tallies[i].record(r))
	}
	return c, nil
}

// chances are what a rule states for each cause at each finding of a job.
func (r rule) chances(findings []Evidence) [][]float64 {
	var all [][]float64
	for _, e := range findings {
		all = append(all, belief(e, r.dependence, r.companion))
	}
	if !r.together {
		return all
	}
	beside := make([][]float64, len(all))
	for j := range all {
		beside[j] = raised(all, priorShares(findings[j]), j)
	}
	return beside
}

// belief is the chance of every cause at one finding, without the rest of a ranking.
func belief(e Evidence, correlation, companion float64) []float64 {
	w := prepare(e)
	w.model = w.model.WithDependence(correlation).WithCompanion(companion)
	w.believe()
	return w.belief
}

// tally counts chances that came true.
type tally struct {
	stated, came            [10]float64
	cell                    [10]int
	n, first, decided, good int
	surprise                float64
}

func (t *tally) count(chances [][]float64, truth []string) {
	for j, p := range chances {
		t.n++
		is := position[truth[j]]
		t.surprise -= math.Log2(math.Max(p[is], 1e-9))
		for h, x := range p {
			b := min(int(10*x), 9)
			t.cell[b]++
			t.stated[b] += x
			if h == is {
				t.came[b]++
			}
		}
		top := order(p)
		if top[0] == is {
			t.first++
		}
		if combined, decided := decideBelief(p, top); decided {
			t.decided++
			if top[0] == is || combined && top[1] == is {
				t.good++
			}
		}
	}
}

func (t tally) record(r rule) RuleRecord {
	out := RuleRecord{Name: r.name, Dependence: r.dependence, Companion: r.companion, Met: true, First: t.first,
		Decided: t.decided, Right: t.good, Undecided: t.n - t.decided, Surprise: t.surprise / float64(max(t.n, 1))}
	for b := range t.cell {
		row := Reliability{From: float64(b) / 10, To: float64(b+1) / 10, Count: t.cell[b]}
		if n := float64(row.Count); n > 0 {
			row.Stated, row.True = t.stated[b]/n, t.came[b]/n
			row.Error = math.Sqrt(row.True * (1 - row.True) / n)
			row.Gap = row.Stated - row.True
		}
		row.Enough = row.Count >= enoughInBin
		if row.Enough {
			out.Worst = math.Max(out.Worst, math.Abs(row.Gap))
		}
		out.Bins = append(out.Bins, row)
	}
	out.Met = out.Worst <= allowedGap
	return out
}
