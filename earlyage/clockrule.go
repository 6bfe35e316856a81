package earlyage

import (
	_ "embed"

	"slabwright/internal/table"
	"slabwright/source"
)

// ClockRule is a rule of thumb for the hours before the first cut.
type ClockRule struct {
	Key, Saw, Name string
	From           string  // placing or finishing
	Hot, Cold      float64 // h
	Source         source.Citation
}

//go:embed clock_rules.csv
var clockTable string

// ClockRules returns the rules for a kind of saw.
func ClockRules(saw string) []ClockRule {
	var out []ClockRule
	for _, row := range table.Read("clock_rules.csv", clockTable).Records() {
		if row["saw"] == saw {
			out = append(out, ClockRule{Key: row["key"], Saw: row["saw"], Name: row["name"], From: row["from"],
				Hot: number(row["hot_h"]), Cold: number(row["cold_h"]),
				Source: source.Cite(row["source"], row["place"]).As(source.How(row["how"]))})
		}
	}
	return out
}

// Nearest returns the hour within the rule that is nearest to an hour after
// placing. A rule that counts from finishing is moved by the hours between placing
// and finishing.
func (r ClockRule) Nearest(hours, finishing float64) float64 {
	shift := 0.0
	if r.From == "finishing" {
		shift = finishing
	}
	return max(r.Hot+shift, min(hours, r.Cold+shift))
}

// Beyond returns how many hours a first cut lies outside the rule: negative before
// its first hour, positive after its last, 0 within. finishing is as in
// [ClockRule.Nearest].
func (r ClockRule) Beyond(hours, finishing float64) float64 {
	return hours - r.Nearest(hours, finishing)
}
