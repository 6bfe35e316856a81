package mesh

import (
	"cmp"
	"fmt"
	"slices"
)

// A segment is a straight bit of input between two points where no other point
// lies, however many inputs run along it. a < b.
type segment struct {
	a, b int32
	set  int32 // index into the sets of marks
	// How the count of outer rings and of holes changes from the right of a→b to
	// its left, rings taken turning left. Runs there and back cancel.
	outer, hole int32
}

// A markTable numbers the distinct sets of marks; number 0 is the empty set.
type markTable struct {
	sets   [][]Mark
	number map[string]int32
}

func newMarkTable() *markTable {
	return &markTable{sets: [][]Mark{nil}, number: map[string]int32{"[]": 0}}
}

// of returns the number of the set holding marks, which are sorted and kept.
func (m *markTable) of(marks []Mark) int32 {
	slices.SortFunc(marks, compareMarks)
	marks = slices.Compact(marks)
	key := fmt.Sprint(marks)
	if i, ok := m.number[key]; ok {
		return i
	}
	i := int32(len(m.sets))
	m.sets = append(m.sets, slices.Clone(marks))
	m.number[key] = i
	return i
}

func compareMarks(x, y Mark) int {
	return cmp.Or(cmp.Compare(x.Kind, y.Kind), cmp.Compare(x.Index, y.Index))
}

// segments merges pieces with the same ends. leftTurning tells for each source
// whether its ring turns left.
func (n *noding) segments(table *markTable, leftTurning []bool) []segment {
	pieces := slices.Clone(n.pieces)
	slices.SortFunc(pieces, func(x, y piece) int {
		return cmp.Or(cmp.Compare(min(x.a, x.b), min(y.a, y.b)),
			cmp.Compare(max(x.a, x.b), max(y.a, y.b)), cmp.Compare(x.source, y.source))
	})
	var out []segment
	var marks []Mark
	for i, p := range pieces {
		a, b := min(p.a, p.b), max(p.a, p.b)
		if i == 0 || out[len(out)-1].a != a || out[len(out)-1].b != b {
			out, marks = append(out, segment{a: a, b: b}), marks[:0]
		}
		s := &out[len(out)-1]
		mark := n.sources[p.source]
		marks = append(marks, mark)
		s.set = table.of(marks)
		change := int32(1)
		if (p.a == a) != leftTurning[p.source] {
			change = -1
		}
		switch mark.Kind {
		case OnOutline:
			s.outer += change
		case OnHole:
			s.hole += change
		}
	}
	return out
}
