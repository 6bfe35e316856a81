package layout

import (
	"fmt"
	"math"

	"slabwright/plan"
)

// pourStrips returns what is placed in one go: panels that no formed or isolation
// joint parts. Block-outs are filled in later and are none of them.
func pourStrips(e *examined) []PourStrip {
	kinds := map[string]plan.JointKind{}
	for _, j := range e.slab.Joints {
		kinds[j.ID] = j.Kind
	}
	part := make([]int, len(e.panels))
	for i := range part {
		part[i] = i
	}
	root := func(i int) int {
		for part[i] != i {
			i = part[i]
		}
		return i
	}
	var parted [][2]int
	for i, p := range e.panels {
		for _, s := range p.Sides {
			if s.Joint == "" || e.block[i] {
				continue
			}
			k := e.beyond(s)
			if k < 0 || e.block[k] {
				continue
			}
			if kinds[s.Joint] == plan.Sawn {
				a, b := root(i), root(k)
				part[max(a, b)] = min(a, b)
			} else {
				parted = append(parted, [2]int{i, k})
			}
		}
	}
	return e.strips(root, parted)
}

// beyond returns the panel on the other side of a side, or -1.
func (e *examined) beyond(s plan.Side) int {
	d, ok := s.To.Minus(s.From).Unit()
	if !ok {
		return -1
	}
	place := s.Segment().At(0.5).Minus(d.Left().Times(0.03))
	for i, p := range e.panels {
		if low, high := p.Ring.Box(); place.X < low.X || place.X > high.X || place.Y < low.Y || place.Y > high.Y {
			continue
		}
		if p.Ring.Contains(place) && !inOpening(p, place) {
			return i
		}
	}
	return -1
}

func inOpening(p plan.Panel, at plan.Point) bool {
	for _, o := range p.Openings {
		if o.Contains(at) {
			return true
		}
	}
	return false
}

// strips makes the strips from the panels' roots, and tells by turns which are placed
// first: no two that touch across a form, where that can be.
func (e *examined) strips(root func(int) int, parted [][2]int) []PourStrip {
	at := map[int]int{}
	var out []PourStrip
	var rings [][]plan.Point
	for i, p := range e.panels {
		if e.block[i] {
			continue
		}
		r := root(i)
		if _, seen := at[r]; !seen {
			at[r] = len(out)
			out = append(out, PourStrip{ID: fmt.Sprintf("S%d", len(out)+1)})
			rings = append(rings, nil)
		}
		s := &out[at[r]]
		s.Panels = append(s.Panels, p.ID)
		s.Area += p.Area
		rings[at[r]] = append(rings[at[r]], p.Ring...)
	}
	touch := make([][]int, len(out))
	for _, pair := range parted {
		a, b := at[root(pair[0])], at[root(pair[1])]
		if a != b {
			touch[a], touch[b] = append(touch[a], b), append(touch[b], a)
		}
	}
	for i := range out {
		out[i].Length, out[i].Width = leastBox(rings[i])
		out[i].First = true
		for _, k := range touch[i] {
			if k < i && out[k].First {
				out[i].First = false
			}
		}
	}
	return out
}

// leastBox returns the sides of the smallest rectangle, turned by whole degrees,
// round some points.
func leastBox(points []plan.Point) (length, width float64) {
	best := math.Inf(1)
	for degrees := 0.0; degrees < 90; degrees++ {
		low, high := straight(plan.Point{}, degrees).box(points)
		a, b := high[0]-low[0], high[1]-low[1]
		if a*b < best-1e-9 {
			best, length, width = a*b, math.Max(a, b), math.Min(a, b)
		}
	}
	return length, width
}
