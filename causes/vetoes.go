package causes

import (
	"slabwright/source"
)

// Veto is a recorded fact that takes causes off the list for good.
type Veto struct {
	Key      string            `json:"key"`
	Excludes []string          `json:"excludes"`
	Because  string            `json:"because"`
	Sources  []source.Citation `json:"sources"`

	variable string
	states   []string
}

var vetoes = readVetoes()

func readVetoes() []Veto {
	var all []Veto
	for _, r := range readTable("vetoes.csv") {
		all = append(all, Veto{r["key"], r.list("excludes"), r["because"], r.citations(), r["variable"], r.list("states")})
	}
	return all
}

// Vetoes returns every veto of the table.
func Vetoes() []Veto { return append([]Veto(nil), vetoes...) }

// exclude takes off the causes that a recorded fact forbids. An observation does
// the same only when it was measured or recorded and leaves no doubt.
func (w *weighing) exclude(e Evidence) {
	w.excluded = make([]bool, len(catalogue))
	for _, v := range vetoes {
		if !e.Recorded[v.Key] && !v.observed(e) {
			continue
		}
		for _, id := range v.Excludes {
			w.excluded[position[id]] = true
			if w.because[id] == "" {
				w.because[id] = v.Because
			}
		}
	}
}

// observed reports whether an observation states the veto's fact.
func (v Veto) observed(e Evidence) bool {
	if v.variable == "" || (v.Key == NoFrost && e.Frost) {
		return false
	}
	stated := false
	for _, o := range e.Observations {
		if o.Variable != v.variable {
			continue
		}
		firm := (o.Known == source.Measured || o.Known == source.Recorded) && len(o.Weights) == 0
		match := false
		for _, s := range v.states {
			match = match || s == o.State
		}
		if !firm || !match {
			return false // somebody saw it otherwise, or was not sure
		}
		stated = true
	}
	return stated
}
