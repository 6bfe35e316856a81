package earlyage

import (
	"cmp"
	"math"
	"slices"
	"time"
)

// Panel is a piece of a strip between two joints that are to be cut, in the order in
// which the panels lie.
type Panel struct {
	ID     string
	Placed time.Time
	Length float64 // along the strip, m
}

// Cut is one joint in the order of cutting.
type Cut struct {
	Between [2]string // the panels on its two sides
	Ripe    time.Time // placing of the younger of the two: its window counts from there
	Uncut   float64   // length without a joint that it divides, m
}

// BestCutOrder returns the order in which to cut the joints of a strip. Of the joints
// that are old enough the next is always the one that leaves the shortest longer
// part of the longest uncut length (skip cutting: the middle first, then the
// quarters), the older one where two are alike. A joint is as old as the younger of
// its panels; the saw begins with the oldest, takes perCut for each, and waits where
// none is as old as the first was.
//
// Every joint's window opens the same time after its own placing, so only the
// differences of placing count here; see [PanelWindows] for windows that differ.
func BestCutOrder(panels []Panel, perCut time.Duration) []Cut {
	if len(panels) < 2 {
		return nil
	}
	position := make([]float64, len(panels)+1) // of the joints; the ends are free
	ripe := make([]time.Time, len(panels)+1)
	for i, p := range panels {
		position[i+1] = position[i] + p.Length
		if i > 0 {
			ripe[i] = younger(panels[i-1].Placed, p.Placed)
		}
	}
	left := make([]int, 0, len(panels)-1)
	for i := 1; i < len(panels); i++ {
		left = append(left, i)
	}
	oldest := func(a, b int) int { return ripe[a].Compare(ripe[b]) }
	now := ripe[slices.MinFunc(left, oldest)]
	cut := make([]bool, len(position))
	cut[0], cut[len(panels)] = true, true
	var order []Cut
	for len(left) > 0 {
		if first := ripe[slices.MinFunc(left, oldest)]; now.Before(first) {
			now = first
		}
		best := -1
		var bestUncut, bestPart float64
		for _, i := range left {
			if ripe[i].After(now) {
				continue
			}
			uncut, part := divides(position, cut, i)
			if best < 0 || cmp.Or(cmp.Compare(bestUncut, uncut), cmp.Compare(part, bestPart), ripe[i].Compare(ripe[best])) < 0 {
				best, bestUncut, bestPart = i, uncut, part
			}
		}
		cut[best] = true
		left = slices.DeleteFunc(left, func(i int) bool { return i == best })
		order = append(order, Cut{[2]string{panels[best-1].ID, panels[best].ID}, ripe[best], bestUncut})
		now = now.Add(perCut)
	}
	return order
}

// divides returns the uncut length that a joint divides and the longer of its parts.
func divides(position []float64, cut []bool, joint int) (uncut, part float64) {
	from, to := joint-1, joint+1
	for !cut[from] {
		from--
	}
	for !cut[to] {
		to++
	}
	return position[to] - position[from], math.Max(position[joint]-position[from], position[to]-position[joint])
}

func younger(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}
