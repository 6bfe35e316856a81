package layout

import (
	_ "embed"

	"slabwright/internal/table"
	"slabwright/plan"
	"slabwright/source"
)

//go:embed rules.csv
var rulesCSV string

// Severity says how much a rule weighs.
type Severity string

// Severities, strongest first.
const (
	Must   Severity = "must"   // a layout with it is not proposed where it can be avoided
	Should Severity = "should" // weighed
	Note   Severity = "note"   // to know
)

// Rule is one rule of joint layout.
type Rule struct {
	Key      string          `json:"key"`
	Severity Severity        `json:"severity"`
	Limit    string          `json:"limit"` // figure of the rule, "-" where the brief gives it
	Unit     string          `json:"unit,omitempty"`
	Says     string          `json:"says"`
	Source   source.Citation `json:"source"`
}

var ruleList, ruleByKey = readRules()

func readRules() ([]Rule, map[string]Rule) {
	var list []Rule
	byKey := map[string]Rule{}
	for _, row := range table.Read("rules.csv", rulesCSV).Records() {
		cited := source.Cite(row["work"], row["place"])
		if how := row["how"]; how != "" {
			cited = cited.As(source.How(how))
		}
		r := Rule{row["key"], Severity(row["severity"]), row["limit"], row["unit"], row["says"], cited}
		list = append(list, r)
		byKey[r.Key] = r
	}
	return list, byKey
}

// Rules returns every rule in table order.
func Rules() []Rule { return append([]Rule{}, ruleList...) }

// breach is one place where a rule is not met.
type breach struct {
	rule    string
	panel   string
	joint   string
	fixture string
	at      plan.Point
	value   float64
	other   string // a second joint
}
