package causes

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"slabwright/source"
)

// Unknown takes an observation away when a fact is changed to it.
const Unknown = "unknown"

// Suppose returns the evidence with one observation changed: a state of the variable, a
// number in its unit ("0.6" or "0.6 mm" for a width), or [Unknown] to leave it out.
// Everything else stays, so that ranking both shows what that one fact does.
func (e Evidence) Suppose(variable, value string) (Evidence, error) {
	v := FindVariable(variable)
	if v == nil {
		return e, fmt.Errorf("%q is not a thing to look for%s", variable, meant(variable, variableNames()))
	}
	out := e
	out.Observations = slices.DeleteFunc(slices.Clone(e.Observations), func(o Observation) bool { return o.Variable == variable })
	if value == Unknown {
		return out, nil
	}
	state, err := v.stateFrom(value)
	if err != nil {
		return e, err
	}
	out.Observations = append(out.Observations, Observation{Variable: variable, State: state, From: "seen", Known: source.Recorded, Text: "if " + Says(variable, state)})
	if variable == "age" {
		out.Recorded = maps.Clone(e.Recorded)
		delete(out.Recorded, CoveredUntilSeen)
	}
	return out, nil
}

// stateFrom reads a state, or a number in the unit of the variable's limits.
func (v Variable) stateFrom(value string) (string, error) {
	if slices.Contains(v.States, value) {
		return value, nil
	}
	l, measured := limits[v.Name]
	number := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(value), l.unit))
	if x, err := strconv.ParseFloat(number, 64); measured && err == nil {
		return StateOf(v.Name, x/l.factor)
	}
	hint := "it can be " + strings.Join(v.States, ", ") + " or " + Unknown
	if measured && l.unit != "" {
		hint += ", or a number in " + l.unit
	}
	return "", fmt.Errorf("%s cannot be %q; %s", v.Name, value, hint)
}
