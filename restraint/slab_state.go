package restraint

import (
	"errors"
	"strconv"

	"slabwright/plan"
)

// slabState is a slab in the course of a replay.
type slabState struct {
	model     *Model
	set       Settings
	lines     []Line         // of the model, then cracks that came
	crossings [][]plan.Point // of each line of the model with the others
	cut       map[side]int   // open sides and their lines
	frame     *frame
	near      *nearby
	hour      float64
	now       []Concrete   // of each pour
	u         []float64    // displacement of each node
	slid      []float64    // over the base
	frozen    [][3]float64 // strain of each triangle at which it would have no stress
	memory    map[seamKey]memory
	scatter   *scatter
	factor    []float64 // of the scatter, for each triangle
	ledger    Ledger
	starts    []plan.Point // of cracks that came
	waits     waits
	tough     []float64 // of each pour now: toughness, see waits
	rounds    int       // factorisations so far
	full      []float64 // tension of each pour if nothing gave, along one direction, Pa
	since     []float64 // shortening of each pour since it set
	moved     []float64 // in the last step
	pulled    float64   // the shortening that moved it
	share     float64   // the greatest tension over strength
	growth    float64   // of it in the last step, 1/h
}

func newSlabState(m *Model, set Settings) (*slabState, error) {
	l, err := laidFor(m, set)
	if err != nil {
		return nil, err
	}
	n := l.net
	s := &slabState{model: m, set: set, lines: l.lines, frame: l.frame, near: l.near, memory: map[seamKey]memory{}, scatter: newScatter(set)}
	s.cut, s.crossings = firstCuts(n, l.lines), crossingsOf(l.lines)
	s.now = make([]Concrete, len(m.Pours))
	s.full, s.since = make([]float64, len(m.Pours)), make([]float64, len(m.Pours))
	s.u = make([]float64, 2*s.frame.nodes)
	s.slid = make([]float64, 2*s.frame.nodes)
	s.frozen = make([][3]float64, len(n.tri))
	s.waits, s.tough = newWaits(len(n.tri)), make([]float64, len(m.Pours))
	for t := range n.tri {
		s.factor = append(s.factor, s.scatter.at(n.middle(t)))
	}
	return s, nil
}

// crossingsOf lists where each line meets the others.
func crossingsOf(lines []Line) [][]plan.Point {
	slab := plan.Slab{}
	for i, l := range lines {
		slab.Joints = append(slab.Joints, plan.Joint{ID: strconv.Itoa(i), Path: l.Path})
	}
	out := make([][]plan.Point, len(lines))
	for _, c := range slab.Crossings() {
		for _, id := range c.Joints {
			i, _ := strconv.Atoi(id)
			out[i] = append(out[i], c.At)
		}
	}
	return out
}

// clear says whether bars of a line keep clear of a point of the net.
func (s *slabState) clear(line int, point int32) bool {
	if line >= len(s.crossings) {
		return false
	}
	for _, c := range s.crossings[line] {
		if s.frame.at[point].To(c) < s.lines[line].Bars.Clear {
			return true
		}
	}
	return false
}

// named puts the name of the line or hold into an error.
func (s *slabState) named(err error, hour float64) error {
	var not *NotSettled
	if errors.As(err, &not) {
		not.Hour = hour
		if not.What != "the base" {
			not.What = s.nameOf(not.line)
		}
	}
	return err
}

func (s *slabState) nameOf(line int) string {
	if line < 0 {
		return s.model.Holds[-1-line].ID
	}
	return s.lines[line].ID
}
