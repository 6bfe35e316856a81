package causes

import (
	"slices"
	"sort"
	"strconv"

	"slabwright/source"
)

// Test is something that can be done on site or in the laboratory to tell causes
// apart, with what it is expected to tell in the present state of knowledge.
type Test struct {
	ID       string            `json:"id"`
	Name     string            `json:"name"`
	Measures string            `json:"measures"`
	Reveals  []string          `json:"reveals"` // variables not known yet that it shows
	Class    int               `json:"class"`   // 0 hand tool .. 4 closure and plant
	ClassIs  string            `json:"class_is"`
	OnSite   string            `json:"on_site"`
	Wait     string            `json:"wait,omitempty"`
	WaitDays float64           `json:"wait_days,omitempty"`
	Limits   string            `json:"limits,omitempty"`
	First    string            `json:"first,omitempty"` // test that must come before it
	Bits     float64           `json:"bits"`            // expected drop of entropy
	Worth    float64           `json:"worth"`           // bits between the causes that are at least possible, for the cost of its class and the wait
	Best     bool              `json:"best_of_class"`
	TopTwo   float64           `json:"top_two"`  // bits it tells between the two leading causes alone
	Outcomes []TestOutcome     `json:"outcomes"` // of the variable that tells most
	Sources  []source.Citation `json:"sources"`
}

// TestOutcome is what one result of a test would do to the ranking.
type TestOutcome struct {
	Variable string  `json:"variable"`
	State    string  `json:"state"`
	Text     string  `json:"text"`    // what the state says
	Chance   float64 `json:"chance"`  // of this result
	Leading  string  `json:"leading"` // cause in front after it
	P        float64 `json:"p"`       // its chance then
}

// classes of cost, with the weight a class has against the bits of a test. Orders
// of magnitude from memory, the weights are our own judgement.
var classes = []struct {
	is   string
	cost float64
}{
	{"hand tool", 1}, {"a share of a trade day", 2}, {"technician with hired kit", 4},
	{"laboratory or specialist crew", 8}, {"closure and plant", 16},
}

// patience is the wait in days that makes a test worth half: a report is promised within
// weeks, a claim runs for months. Our own judgement.
const patience = 30.0

// leastBits is what a test must be expected to tell to be proposed.
const leastBits = 0.01

var testTable = readTests()

func readTests() []Test {
	var all []Test
	for _, r := range readTable("tests.csv") {
		class, err := strconv.Atoi(r["class"])
		if err != nil || class < 0 || class >= len(classes) {
			panic("causes: tests.csv: class of " + r["id"])
		}
		days, err := strconv.ParseFloat(r["wait_days"], 64)
		if err != nil || !(days >= 0) {
			panic("causes: tests.csv: wait_days of " + r["id"])
		}
		for _, v := range r.list("reveals") {
			if FindVariable(v) == nil {
				panic("causes: tests.csv: " + r["id"] + " reveals unknown " + v)
			}
		}
		all = append(all, Test{ID: r["id"], Name: r["name"], Measures: r["measures"], Reveals: r.list("reveals"),
			Class: class, ClassIs: classes[class].is, OnSite: r["on_site"], Wait: r["wait"], WaitDays: days, Limits: r["limits"],
			First: r["first"], Sources: r.citations()})
	}
	return all
}

// Tests returns every test of the table, without expectations.
func Tests() []Test { return append([]Test(nil), testTable...) }

// nextTests ranks the tests by bits for their cost class and wait.
func (w *weighing) nextTests() []Test {
	var all []Test
	for _, t := range testTable {
		var open []string
		for _, v := range t.Reveals {
			if w.open(v) {
				open = append(open, v)
			}
		}
		if len(open) == 0 {
			continue
		}
		t.Reveals = open
		t.Bits = w.model.Information(w.belief, w.evidence, open...)
		if t.Bits < leastBits {
			continue
		}
		t.TopTwo = w.model.Information(w.topTwo(), w.evidence, open...)
		t.Worth = w.model.Information(w.leaders(), w.evidence, open...) / (classes[t.Class].cost * (1 + t.WaitDays/patience))
		t.Outcomes = w.testOutcomes(open)
		all = append(all, t)
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].Worth > all[j].Worth })
	markBest(all)
	return all
}

// leaders is the belief as if only the causes that are at least possible were left:
// a test is worth what it tells of these, not of those nobody thinks of any more.
func (w *weighing) leaders() []float64 {
	p, sum := make([]float64, len(w.belief)), 0.0
	for n, h := range order(w.belief) {
		if n < 2 || w.belief[h] >= possibleAbove {
			p[h] = w.belief[h]
			sum += p[h]
		}
	}
	for h := range p {
		p[h] /= sum
	}
	return p
}

// topTwo is the belief as if only the two leading causes were left.
func (w *weighing) topTwo() []float64 {
	top := order(w.belief)[:2]
	p, sum := make([]float64, len(w.belief)), w.belief[top[0]]+w.belief[top[1]]
	for _, h := range top {
		p[h] = w.belief[h] / sum
	}
	return p
}

// markBest marks the test that tells most in each cost class.
func markBest(all []Test) {
	best := map[int]int{}
	for i, t := range all {
		if j, ok := best[t.Class]; !ok || t.Bits > all[j].Bits {
			best[t.Class] = i
		}
	}
	for _, i := range best {
		all[i].Best = true
	}
}

// testOutcomes shows what the states of the most telling variable would do.
func (w *weighing) testOutcomes(open []string) []TestOutcome {
	most, bits := open[0], -1.0
	for _, v := range open {
		if b := w.model.Information(w.belief, w.evidence, v); b > bits {
			most, bits = v, b
		}
	}
	var all []TestOutcome
	for _, o := range w.model.Outcomes(w.belief, w.evidence, most) {
		top := order(o.After)[0]
		all = append(all, TestOutcome{most, o.State, Says(most, o.State), o.Chance, catalogue[top].ID, o.After[top]})
	}
	return all
}

// open reports whether a variable is not known yet and makes sense for the
// pattern that was seen.
func (w *weighing) open(variable string) bool {
	if slices.Contains(w.pointless, variable) {
		return false
	}
	for _, e := range w.evidence {
		if e.Name == variable {
			return false
		}
	}
	applies := FindVariable(variable).Applies
	if applies == "any" {
		return true
	}
	for i, e := range w.evidence {
		if e.Name != "pattern" {
			continue
		}
		for _, o := range w.seen[i] {
			for state := range o.shares() {
				if patternKind[state] == applies {
					return true
				}
			}
		}
		return false
	}
	return true
}

// patternKind sorts the patterns into those a question may apply to.
var patternKind = map[string]string{
	"line": "line", "shorts": "line", "grid": "line", "cornerarc": "line", "shatter": "line",
	"finemap": "map", "coarsemap": "map",
	"surface-loss": "surface", "pits": "surface", "bump-or-sheet": "surface", "colour": "surface",
	"edge-chips": "joint", "step": "joint", "crescents": "joint",
}

// missing returns what nobody has looked at that bears most on cause h.
func (w *weighing) missing(h int) []MissingEvidence {
	var all []MissingEvidence
	for _, v := range variables {
		if !w.open(v.Name) {
			continue
		}
		bits := w.model.InformationAbout(h, w.belief, w.evidence, v.Name)
		if bits < leastBits/10 {
			continue
		}
		all = append(all, MissingEvidence{v.Name, v.Question, cheapest(v.Name), bits})
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].Bits > all[j].Bits })
	return all[:min(len(all), mostMissing)]
}

// mostMissing is how many missing pieces are listed for a cause.
const mostMissing = 4

// cheapest names the cheapest test that shows a variable.
func cheapest(variable string) string {
	best := -1
	for i, t := range testTable {
		for _, v := range t.Reveals {
			if v == variable && (best < 0 || t.Class < testTable[best].Class) {
				best = i
			}
		}
	}
	if best < 0 {
		return ""
	}
	return testTable[best].Name
}
