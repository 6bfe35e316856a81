package plan

import (
	"fmt"
	"strings"
)

// Problem is something in a job's facts that cannot be as written: where it
// stands, where it is on the plan, what was found, what was expected and how it
// is likely mended. Other packages use it for their own checks.
type Problem struct {
	Field string `json:"field"` // "slabs[0].joints[3].path_m[1]"
	Place *Point `json:"place,omitempty"`
	Found string `json:"found"`
	Want  string `json:"want"`
	Mend  string `json:"mend"`
}

// Error returns the problem as one sentence or two.
func (p Problem) Error() string {
	var b strings.Builder
	b.WriteString(p.Field)
	if p.Place != nil {
		fmt.Fprintf(&b, " at (%.3f, %.3f) m", p.Place.X, p.Place.Y)
	}
	fmt.Fprintf(&b, ": %s; %s.", p.Found, p.Want)
	if p.Mend != "" {
		b.WriteString(" " + p.Mend)
	}
	return b.String()
}

// Under returns the problems with the field put under a parent: "outline_m" under
// "slabs[0]" is "slabs[0].outline_m".
func Under(parent string, problems []Problem) []Problem {
	out := make([]Problem, len(problems))
	for i, p := range problems {
		out[i] = p
		out[i].Field = strings.TrimSuffix(parent+"."+p.Field, ".")
	}
	return out
}
