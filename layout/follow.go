package layout

import (
	"math"

	"slabwright/plan"
)

// reach returns a moved joint with each end on what the old end was on: another joint,
// or else the edge or opening in its way.
func reach(s plan.Slab, i int, old, moved plan.Polyline) plan.Polyline {
	g := newGround(s, ringBlocks(s))
	low, high := plan.Ring(s.Outline).Box()
	far := high.Minus(low).Norm()
	line := append(plan.Polyline{}, moved...)
	for range 2 {
		n := len(line)
		d, _ := line[n-1].Minus(line[n-2]).Unit()
		line[n-1] = line[n-1].Plus(d.Times(far))
		line = backwards(line)
	}
	pieces := g.clip(line)
	best, most := plan.Polyline(nil), 0.0
	for _, p := range pieces {
		if shared := sharedLength(p, moved); shared > most {
			best, most = p, shared
		}
	}
	if best == nil {
		return nil
	}
	for _, end := range []plan.Point{old[0], old[len(old)-1]} {
		for k, j := range s.Joints {
			if k == i || isRing(j) {
				continue
			}
			if _, _, d := plan.Polyline(j.Path).Nearest(end); d > plan.JointReach {
				continue
			}
			middle, _ := moved.At(moved.Length() / 2)
			best = stopAt(best, j.Path, end.Plus(moved[0].Minus(old[0])), middle)
		}
	}
	return best
}

// sharedLength returns over what length of a line another lies on it.
func sharedLength(line, other plan.Polyline) (length float64) {
	for _, a := range line.Pieces() {
		for _, b := range other.Pieces() {
			length += a.Overlap(b, fuzz)
		}
	}
	return length
}

// stopAt returns the part of a line on one side of another that it stops at: cut at
// the crossing nearest to where its end was, on the side where its middle is.
func stopAt(line, at plan.Polyline, end, middle plan.Point) plan.Polyline {
	cuts := meets(line, at)
	if len(cuts) == 0 {
		return line
	}
	where, _, _ := line.Nearest(end)
	best := cuts[0]
	for _, c := range cuts {
		if math.Abs(c-where) < math.Abs(best-where) {
			best = c
		}
	}
	length := line.Length()
	half, _, _ := line.Nearest(middle)
	switch {
	case best < shortest || best > length-shortest:
		return line
	case half < best:
		return part(line, 0, best)
	}
	return part(line, best, length)
}

// followed returns a joint whose ends were on an old line with those ends on the moved
// one, along its own direction.
func followed(path []plan.Point, old, moved plan.Polyline) []plan.Point {
	out := append(plan.Polyline{}, path...)
	if len(out) < 2 || out[0] == out[len(out)-1] {
		return path
	}
	for range 2 {
		n := len(out)
		if _, _, d := old.Nearest(out[n-1]); d <= plan.JointReach {
			dir, _ := out[n-1].Minus(out[n-2]).Unit()
			far := out[n-2].To(out[n-1]) + 100
			ray := plan.Segment{A: out[n-2], B: out[n-2].Plus(dir.Times(far))}
			best := math.Inf(1)
			for _, p := range moved.Pieces() {
				if t, _, ok := ray.Cross(p); ok && t*far > shortest {
					best = math.Min(best, t)
				}
			}
			if !math.IsInf(best, 1) {
				out[n-1] = ray.At(best)
			}
		}
		out = backwards(out)
	}
	return out
}
