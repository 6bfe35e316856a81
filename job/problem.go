package job

import (
	"fmt"
	"strings"

	"slabwright/plan"
)

// Level says what a problem stops.
type Level string

// The levels of a problem.
const (
	Error   Level = "error"     // the job cannot be worked on before it is mended
	Warning Level = "warning"   // kept and worked with as it is; look at it
	Unknown Level = "not known" // nobody knows it; the answers in Blocks are not given
)

// Problem is one thing about a job that the engineer should look at: where it
// stands in the file, where on the plan, what was found, what was expected and
// the likely mend.
type Problem struct {
	Level  Level       `json:"level"`
	Code   string      `json:"code"`            // short and stable, to look up: "range", "time-order"
	Field  string      `json:"field"`           // "slabs[0].thickness_m"
	Line   int         `json:"line,omitempty"`  // in job.json, from 1
	Place  string      `json:"place,omitempty"` // on the plan, in words
	At     *plan.Point `json:"at_m,omitempty"`  // on the plan
	Found  string      `json:"found"`
	Want   string      `json:"want,omitempty"` // range with unit, or form
	Mend   string      `json:"mend,omitempty"`
	Blocks []string    `json:"blocks,omitempty"` // answers not given while this is not known
}

// String returns the problem as one line for the engineer.
func (p Problem) String() string {
	var b strings.Builder
	b.WriteString(string(p.Level) + ": ")
	if p.Field != "" {
		b.WriteString(p.Field)
		if p.Line > 0 && !strings.HasPrefix(p.Found, "line ") {
			fmt.Fprintf(&b, " (line %d)", p.Line)
		}
		b.WriteString(": ")
	}
	b.WriteString(p.Found)
	if p.Place != "" {
		b.WriteString(", " + p.Place)
	}
	if p.Want != "" {
		b.WriteString("; " + p.Want)
	}
	if len(p.Blocks) > 0 {
		b.WriteString("; so these answers are not given: " + strings.Join(p.Blocks, ", "))
	}
	b.WriteString(".")
	if p.Mend != "" {
		b.WriteString(" " + p.Mend)
	}
	return b.String()
}

// IsError reports whether the problem must be mended before the job is worked on.
func (p Problem) IsError() bool { return p.Level == Error }

// Errors returns the problems that must be mended first.
func Errors(problems []Problem) []Problem { return ofLevel(problems, Error) }

func ofLevel(problems []Problem, level Level) []Problem {
	var of []Problem
	for _, p := range problems {
		if p.Level == level {
			of = append(of, p)
		}
	}
	return of
}

// LoadError is everything that kept a job file from being read.
type LoadError struct {
	File     string    `json:"file"`
	Problems []Problem `json:"problems"`
}

// Error returns one line a problem.
func (e *LoadError) Error() string {
	lines := make([]string, 0, len(e.Problems)+1)
	lines = append(lines, e.File+" was not read:")
	for _, p := range e.Problems {
		lines = append(lines, "  "+strings.TrimPrefix(p.String(), string(Error)+": "))
	}
	return strings.Join(lines, "\n")
}
