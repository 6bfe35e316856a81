package causes

import (
	"bufio"
	"fmt"
	"math"
	"strings"
	"sync"

	"slabwright/internal/bayes"
	"slabwright/source"
)

// Variable is something of a finding that can be observed.
type Variable struct {
	Name     string            `json:"name"`
	Question string            `json:"question"`
	Unit     string            `json:"unit,omitempty"`
	States   []string          `json:"states"`
	Group    string            `json:"group,omitempty"`
	Applies  string            `json:"applies"` // line, map, surface, joint or any
	Sources  []source.Citation `json:"sources"`
}

// The engine's settings. Companion and dependence are those under which stated chances
// come true as often as they say for invented jobs (see [Calibrate]); they were set on
// other seeds than those they are tested on. The rest is our own judgement.
const (
	companion      = 0.8   // weight of the weaker members of a group
	dependence     = 0.035 // correlation between pieces of evidence
	dependenceLow  = 0.015 // the range of an answer runs over these
	dependenceHigh = 0.07
	seenLate       = 0.1 // share of cracks first seen one age state later than they could have been
)

// digitWeight is the weight of a digit of bands.txt.
var digitWeight = map[rune]float64{'1': 0.01, '2': 0.05, '3': 0.15, '4': 0.40, '5': 0.80}

var (
	bands     = readBands()
	variables = readVariables()
)

// band is the block of one variable: states, and digits by cause.
type band struct {
	states []string
	digits map[string]string
}

func readBands() map[string]band {
	text, err := tables.ReadFile("tables/bands.txt")
	if err != nil {
		panic("causes: " + err.Error())
	}
	all, name := map[string]band{}, ""
	lines := bufio.NewScanner(strings.NewReader(string(text)))
	for n := 1; lines.Scan(); n++ {
		words := strings.Fields(lines.Text())
		switch {
		case len(words) == 0 || words[0] == "#" || strings.HasPrefix(words[0], "#"):
		case words[0] == "variable":
			name = words[1]
		case words[0] == "states":
			all[name] = band{states: words[1:], digits: map[string]string{}}
		default:
			addRow(all[name], words, n)
		}
	}
	return all
}

func addRow(b band, words []string, line int) {
	if len(words[0]) != len(b.states) {
		panic(fmt.Sprintf("causes: bands.txt line %d: %d digits for %d states", line, len(words[0]), len(b.states)))
	}
	for _, cause := range words[1:] {
		_, known := position[cause]
		if _, twice := b.digits[cause]; twice || (cause != "*" && !known) {
			panic(fmt.Sprintf("causes: bands.txt line %d: cause %q is not in the catalogue or is given twice", line, cause))
		}
		b.digits[cause] = words[0]
	}
}

func readVariables() []Variable {
	var all []Variable
	for _, r := range readTable("variables.csv") {
		b, ok := bands[r["name"]]
		if !ok {
			panic("causes: bands.txt has no variable " + r["name"])
		}
		all = append(all, Variable{r["name"], r["question"], r["unit"], b.states, r["group"], r["applies"], r.citations()})
	}
	return all
}

// Variables returns everything that can be observed, in the order of the table.
func Variables() []Variable { return append([]Variable(nil), variables...) }

// FindVariable returns the variable of this name, or nil.
func FindVariable(name string) *Variable {
	for i := range variables {
		if variables[i].Name == name {
			return &variables[i]
		}
	}
	return nil
}

// chances returns P(state | cause) for one cause: the weights of its digits, or of
// the common row, scaled to one. [Other] is flat: it says nothing.
func (b band) chances(cause string) []float64 {
	digits, ok := b.digits[cause]
	if !ok {
		digits = b.digits["*"]
	}
	p, sum := make([]float64, len(b.states)), 0.0
	for i, d := range digits {
		p[i] = digitWeight[d]
		if cause == Other {
			p[i] = 1
		}
		sum += p[i]
	}
	for i := range p {
		p[i] /= sum
	}
	return p
}

// Chance returns how often a state of a variable is met under a cause, by the bands.
// NaN when one of the names is unknown.
func Chance(cause, variable, state string) float64 {
	b, ok := bands[variable]
	if _, known := position[cause]; !ok || !known {
		return math.NaN()
	}
	for i, s := range b.states {
		if s == state {
			return b.chances(cause)[i]
		}
	}
	return math.NaN()
}

// firstSeenLate lets a share of every age state be noticed one state later:
// people see a crack when they come by, not when it forms.
func firstSeenLate(p []float64) []float64 {
	late := make([]float64, len(p))
	for i := range p {
		late[i] += (1 - seenLate) * p[i]
		late[min(i+1, len(p)-1)] += seenLate * p[i]
	}
	return late
}

// networkOn returns the discrete model on prior odds. The bands never change, so the
// model is built once.
func networkOn(priors []Prior) *bayes.Model {
	odds := make([]float64, len(priors))
	for h, p := range priors {
		odds[h] = p.Odds
	}
	return bandNetwork().WithOdds(odds)
}

var bandNetwork = sync.OnceValue(func() *bayes.Model { return network(Priors(External, true, nil)) })

// network builds the discrete model on prior odds.
func network(priors []Prior) *bayes.Model {
	m := bayes.Model{Companion: companion, Temper: 1, Dependence: dependence}
	for _, p := range priors {
		m.Hypotheses = append(m.Hypotheses, p.Cause)
		m.Odds = append(m.Odds, p.Odds)
	}
	for _, v := range variables {
		b := bands[v.Name]
		bv := bayes.Variable{Name: v.Name, States: v.States, Group: v.Group}
		for _, c := range catalogue {
			p := b.chances(c.ID)
			if v.Name == "age" && c.ID != Other {
				p = firstSeenLate(p)
			}
			bv.Likelihood = append(bv.Likelihood, p)
		}
		m.Variables = append(m.Variables, bv)
	}
	built, err := bayes.New(m)
	if err != nil {
		panic("causes: " + err.Error())
	}
	return built
}

// withoutFrost multiplies the prior odds of frost damage where nothing freezes.
const withoutFrost = 0.02
