package layout

import (
	"fmt"
	"math"

	"slabwright/plan"
)

// Review holds a slab with joints against the rules and returns what it finds, the
// strongest first, each with a way to mend it where one is known. It is quick: it
// follows a joint that is being dragged.
func Review(s plan.Slab, b Brief) []Warning {
	limit := b.Spacing.Panel
	if !(limit > 0) {
		limit = spacingCap
	}
	e, err := examine(s, limit)
	if err != nil {
		return []Warning{{Code: "plan", Severity: Must, Found: err.Error(), Rule: "the outline has to be a ring that does not cross itself"}}
	}
	e.holds()
	e.bars(b)
	var out []Warning
	for _, severity := range []Severity{Must, Should, Note} {
		for _, x := range e.breaches {
			if r := ruleByKey[x.rule]; r.Severity == severity {
				w := x.warning(r, limit)
				w.Mend = x.mend(e, limit)
				out = append(out, w)
			}
		}
	}
	return out
}

// warning puts a breach in words.
func (x breach) warning(r Rule, limit float64) Warning {
	return Warning{Code: r.Key, Severity: r.Severity, Panel: x.panel, Joint: x.joint, Fixture: x.fixture, At: x.at,
		Found: x.found(limit), Rule: r.Says, Source: r.Source.String()}
}

// found says what is there.
func (x breach) found(limit float64) string {
	switch x.rule {
	case "sliver":
		return fmt.Sprintf("%s is %.2f m wide at its narrowest.", x.panel, x.value)
	case "sharp":
		return fmt.Sprintf("%s has a corner of %.0f degrees at %s.", x.panel, x.value, x.joint)
	case "corner":
		if x.fixture != "" {
			return fmt.Sprintf("No joint meets the corner of %s.", x.fixture)
		}
		return fmt.Sprintf("No joint meets the inside corner of %s.", x.panel)
	case "bars":
		if x.fixture == "" {
			return fmt.Sprintf("Bars cross an inside corner of %s that no joint meets.", x.panel)
		}
		return fmt.Sprintf("Bars cross a corner of %s that no joint meets.", x.fixture)
	case "tee":
		return fmt.Sprintf("%s stops at %s and nothing goes on beyond.", x.joint, x.other)
	case "loose":
		return fmt.Sprintf("%s stops %.2f m short of an edge or a joint.", x.joint, x.value)
	case "spacing":
		return fmt.Sprintf("%s is %.2f m long; the limit is %.2f m.", x.panel, x.value, limit)
	case "aspect":
		return fmt.Sprintf("%s is %.2f times as long as wide.", x.panel, x.value)
	case "shape":
		return fmt.Sprintf("%s fills %.0f %% of its rectangle.", x.panel, math.Round(x.value*100))
	case "isolation":
		return fmt.Sprintf("%s is not free of the slab all round.", x.fixture)
	case "column":
		return fmt.Sprintf("Column %s has no block-out round it.", x.fixture)
	case "dowel clear":
		return fmt.Sprintf("The first dowel of %s is %.2f m from where %s crosses it.", x.joint, x.value, x.other)
	case "dowel sideways":
		return fmt.Sprintf("%s and %s both have dowels, and those of %s cannot move sideways.", x.joint, x.other, x.joint)
	case "dowel thin":
		return fmt.Sprintf("%s has dowels in a slab of %.0f mm.", x.joint, x.value*1000)
	case "transfer":
		return fmt.Sprintf("Wheels cross %s and nothing holds its sides level.", x.joint)
	case "steel":
		return fmt.Sprintf("Steel %s runs through the joints.", x.other)
	case "bend":
		return fmt.Sprintf("%s bends by %.0f degrees in the side of %s.", x.joint, x.value, x.panel)
	}
	return ""
}
