package layout

import (
	"math"

	"slabwright/plan"
)

const (
	legLength = 0.6 // of a leg that turns a joint square to an edge, m
	legTurn   = 18  // of one leg, degrees: less than what makes a corner of the panel
	squareTo  = 63  // the angle wanted, degrees: some more than the rule's 60
	mostLegs  = 2   // more would make a curve that nobody cuts
)

// square turns the ends of joints that meet an edge under 60 degrees towards the
// square, by short legs; an end that cannot be turned is cut back to the last joint
// it crosses, which becomes an isolation joint there.
//
// Source: re-squaring by a short leg, common practice.
func (k *sketch) square() {
	g := k.board.ground
	for i := range k.runs {
		for range 2 { // both ends
			path := k.runs[i].path
			n := len(path)
			if g.sharpest(path[n-2], path[n-1]) < plan.SharpBelow {
				if turned, ok := g.turned(path); ok {
					path = turned
				} else {
					path = k.cutBack(i)
				}
			}
			if len(path) < 2 {
				k.runs[i].path = nil
				break
			}
			k.runs[i].path = backwards(path)
		}
	}
	kept := k.runs[:0]
	for _, r := range k.runs {
		if r.path.Length() >= shortest && !doubled(r.path, kept) {
			kept = append(kept, r)
		}
	}
	k.runs = kept
}

// doubled reports whether a line lies on one of the others for more than a little.
func doubled(path plan.Polyline, others []run) bool {
	for _, o := range others {
		for _, a := range path.Pieces() {
			for _, b := range o.path.Pieces() {
				if !apart(a, b) && a.Overlap(b, fuzz) >= shortest/2 {
					return true
				}
			}
		}
	}
	return false
}

// cutBack returns the i-th joint up to the last one of the other family that it
// crosses, and makes that one an isolation joint, so that nothing goes on beyond it;
// nil when it crosses none.
func (k *sketch) cutBack(i int) plan.Polyline {
	own := k.runs[i]
	length := own.path.Length()
	best, by := 0.0, -1
	for n, r := range k.runs {
		if r.family == own.family || len(r.path) < 2 {
			continue
		}
		for _, at := range meets(own.path, r.path) {
			if at > best && at < length-fuzz {
				best, by = at, n
			}
		}
	}
	if by < 0 {
		return nil
	}
	for n, r := range k.runs {
		if r.family == k.runs[by].family && r.line == k.runs[by].line {
			k.runs[n].kind = plan.Isolation
		}
	}
	return part(own.path, 0, best)
}

// meets returns how far along a line another crosses it.
func meets(path, other plan.Polyline) (at []float64) {
	along := 0.0
	for _, p := range path.Pieces() {
		for _, o := range other.Pieces() {
			if apart(p, o) {
				continue
			}
			if t, _, ok := p.Cross(o); ok {
				at = append(at, along+t*p.Length())
			}
		}
		along += p.Length()
	}
	return at
}

func backwards(path plan.Polyline) plan.Polyline {
	out := make(plan.Polyline, len(path))
	for i, p := range path {
		out[len(path)-1-i] = p
	}
	return out
}

// turned returns the line with its end turned by legs, and whether that
// made it meet the edge at 60 degrees or more.
func (g *ground) turned(path plan.Polyline) (plan.Polyline, bool) {
	length := path.Length()
	for legs := 1; legs <= mostLegs; legs++ {
		for _, back := range []float64{0, 0.3, 0.6} { // further back where the last leg would be too short
			start := length - legLength*float64(legs) - back
			if start < 2*legLength {
				return nil, false
			}
			for _, sign := range []float64{1, -1} {
				if out, ok := g.swing(path, start, legs, sign); ok {
					return out, true
				}
			}
		}
	}
	return nil, false
}

// swing turns the line from a distance along it, leg by leg, to one side.
func (g *ground) swing(path plan.Polyline, start float64, legs int, sign float64) (plan.Polyline, bool) {
	out := part(path, 0, start)
	at, d := path.At(start)
	heading := math.Atan2(d.Y, d.X)
	for leg := 1; leg <= legs; leg++ {
		heading += sign * legTurn * math.Pi / 180
		way := plan.Point{X: math.Cos(heading), Y: math.Sin(heading)}
		reach := legLength
		if leg == legs {
			reach = 4 * legLength
		}
		hit, ok := g.firstHit(at, way, reach)
		switch {
		case leg < legs && ok, leg == legs && !ok:
			return nil, false
		case leg < legs:
			at = at.Plus(way.Times(reach))
			out = append(out, at)
			continue
		}
		if hit.To(at) < legLength/2 || g.sharpest(at, hit) < squareTo {
			return nil, false
		}
		out = append(out, hit)
	}
	return out, true
}

// firstHit returns where a ray from a place in concrete first meets a side.
func (g *ground) firstHit(from, way plan.Point, reach float64) (plan.Point, bool) {
	ray := plan.Segment{A: from, B: from.Plus(way.Times(reach))}
	best := math.Inf(1)
	for _, s := range g.sides {
		if apart(ray, s) {
			continue
		}
		if t, _, ok := ray.Cross(s); ok && t > 1e-6 {
			best = math.Min(best, t)
		}
	}
	return ray.At(math.Min(best, 1)), !math.IsInf(best, 1)
}
