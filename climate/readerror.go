package climate

import (
	"fmt"
	"sort"
	"strings"
)

// ReadError is one thing wrong in a weather file.
type ReadError struct {
	Line   int    // first line it stands on, 1 at the top; 0: the whole file
	Column string // head of the column, "" when it is the line
	Text   string // what was found, what is expected, the likely mend
	Count  int    // how many lines share it
}

// String returns the error with its place.
func (e ReadError) String() string {
	var s strings.Builder
	if e.Line > 0 {
		fmt.Fprintf(&s, "line %d", e.Line)
		if e.Column != "" {
			fmt.Fprintf(&s, ", column %q", e.Column)
		}
		s.WriteString(": ")
	}
	s.WriteString(e.Text)
	if e.Count > 1 {
		fmt.Fprintf(&s, " (and on %d more lines)", e.Count-1)
	}
	return s.String()
}

// ReadErrors is everything wrong in a weather file, in order of lines. Nothing was
// taken from the file.
type ReadErrors struct {
	Name string // of the file
	List []ReadError
}

// Error returns every error, one a line.
func (e *ReadErrors) Error() string {
	lines := make([]string, len(e.List))
	for i, one := range e.List {
		lines[i] = one.String()
		if e.Name != "" {
			lines[i] = e.Name + ": " + lines[i]
		}
	}
	return strings.Join(lines, "\n")
}

// add notes an error; errors of the same kind in the same column are counted, not
// repeated.
func (e *ReadErrors) add(line int, column, kind, text string) {
	for i := range e.List {
		if kind != "" && e.List[i].Column == column && strings.HasPrefix(e.List[i].Text, kind) {
			e.List[i].Count++
			return
		}
	}
	e.List = append(e.List, ReadError{line, column, kind + text, 1})
}

// orNil returns the errors as an error, nil when there are none.
func (e *ReadErrors) orNil() error {
	if len(e.List) == 0 {
		return nil
	}
	sort.SliceStable(e.List, func(i, j int) bool { return e.List[i].Line < e.List[j].Line })
	return e
}

// check adds every impossible value of a record read from these lines.
func (e *ReadErrors) check(hours []Hour, lines []int, column func(quantity string) string) {
	for i := range hours {
		for _, q := range quantitiesOfHour {
			v := *q.get(&hours[i])
			_, mend, impossible := doubtOf(q, v)
			if !impossible {
				continue
			}
			kind := q.name + " is outside " + span(q)
			e.add(lines[i], column(q.name), kind, fmt.Sprintf(": found %s. %s", number(v, q.unit), mend))
		}
	}
}
