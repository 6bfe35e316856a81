package causes

import (
	"strings"

	"slabwright/source"
)

// Case is a textbook case: what a published guide says the cause is.
type Case struct {
	ID       string            `json:"id"`
	Site     string            `json:"site"`
	Story    string            `json:"story"`
	Evidence Evidence          `json:"evidence"`
	Expected string            `json:"expected"` // cause
	Rule     string            `json:"rule"`     // the published rule, in our words
	Sources  []source.Citation `json:"sources"`
}

// CaseResult is a textbook case beside what the ranking gives.
type CaseResult struct {
	Case    Case    `json:"case"`
	Got     string  `json:"got"`
	Chance  float64 `json:"chance"`
	About   string  `json:"about"`
	Decided bool    `json:"decided"`
	OK      bool    `json:"ok"` // the expected cause leads
}

// Cases returns the textbook cases.
func Cases() []Case {
	var all []Case
	for _, r := range parseTable("cases.csv", casesCSV) {
		c := Case{ID: r["id"], Site: r["site"], Story: r["story"], Expected: r["expected"], Rule: r["rule"], Sources: r.citations()}
		c.Evidence = Evidence{Finding: r["site"], Exposure: r["exposure"], Frost: r["frost"] == "yes"}
		for _, pair := range strings.Fields(r["states"]) {
			variable, state, _ := strings.Cut(pair, "=")
			c.Evidence.Observations = append(c.Evidence.Observations,
				Observation{Variable: variable, State: state, From: "seen", Known: source.Recorded})
		}
		all = append(all, c)
	}
	return all
}

// Result ranks the case.
func (c Case) Result() CaseResult {
	r := Rank(c.Evidence)
	top := r.Top()
	return CaseResult{c, top.Cause, top.P, top.About, r.Decided, top.Cause == c.Expected}
}

// CaseResults ranks every textbook case.
func CaseResults() []CaseResult {
	var all []CaseResult
	for _, c := range Cases() {
		all = append(all, c.Result())
	}
	return all
}
