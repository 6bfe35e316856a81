package layout

import (
	"sort"

	"slabwright/plan"
)

const (
	alikeShare = 0.15 // of joint that lies elsewhere, up to which two layouts are alike
	alikeWidth = 0.5  // how far off a line counts as elsewhere, m
	worthMore  = 0.5  // of score, that another layout may be worse than the best
	mostLooked = 60   // layouts looked at
	mostMore   = 1.4  // times as many panels as the best, that it may have
)

// unlike returns the best layout that is not like one of those taken already, from all
// that were tried, as long as it breaks no more rules and is little worse; else the best.
func (q *search) unlike(w Weights, best *trial, taken []*trial) *trial {
	if !likeAny(best.slab, taken) {
		return best
	}
	most := w.score(best.measure) + worthMore
	var near []*trial
	for _, t := range q.trials {
		if w.score(t.measure) <= most && t.setting.strips == best.setting.strips && t.measure.Hard() <= best.measure.Hard() && t.measure.Long <= best.measure.Long+1 && float64(t.measure.Panels) <= mostMore*float64(best.measure.Panels) {
			near = append(near, t)
		}
	}
	sort.Slice(near, func(i, k int) bool {
		a, b := w.score(near[i].measure), w.score(near[k].measure)
		return a < b || a == b && near[i].key < near[k].key
	})
	for _, t := range near[:min(len(near), mostLooked)] {
		if !likeAny(t.slab, taken) {
			return t
		}
	}
	return best
}

func likeAny(s plan.Slab, taken []*trial) bool {
	for _, t := range taken {
		if alike(s, t.slab) {
			return true
		}
	}
	return false
}

// alike reports whether nearly all joints of two layouts lie in the same places.
func alike(a, b plan.Slab) bool {
	return elsewhere(a, b) <= alikeShare && elsewhere(b, a) <= alikeShare
}

// elsewhere returns the share of the joints of a slab that lie where another has none.
func elsewhere(a, b plan.Slab) float64 {
	var pieces []plan.Segment
	for _, j := range b.Joints {
		pieces = append(pieces, plan.Polyline(j.Path).Pieces()...)
	}
	total, off := 0.0, 0.0
	const step = 1.0
	for _, j := range a.Joints {
		path := plan.Polyline(j.Path)
		for at := step / 2; at < path.Length(); at += step {
			p, _ := path.At(at)
			total++
			if !nearAny(pieces, p) {
				off++
			}
		}
	}
	if total == 0 {
		return 0
	}
	return off / total
}

func nearAny(pieces []plan.Segment, p plan.Point) bool {
	for _, s := range pieces {
		if _, d := s.Nearest(p); d < alikeWidth {
			return true
		}
	}
	return false
}
