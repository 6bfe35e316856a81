package plan

import "math"

// finite returns the points that are places at all; an editor's slip must not turn
// every distance into nothing.
func finite(points []Point) []Point {
	var kept []Point
	for _, p := range points {
		if checkFinite("", p) == nil {
			kept = append(kept, p)
		}
	}
	return kept
}

// singles returns the points of a finding that has no length: a core hole, a
// popout.
func singles(lines [][]Point, area []Point) []sample {
	var all []sample
	for _, l := range append(append([][]Point{}, lines...), area) {
		for _, p := range l {
			all = append(all, sample{at: p, length: 1e-9})
		}
	}
	return all
}

// areaSamples returns points over a patch, each standing for an equal part.
func areaSamples(area Ring) []sample {
	low, high := area.Box()
	step := math.Max(high.X-low.X, high.Y-low.Y) / 24
	var all []sample
	for y := low.Y + step/2; y < high.Y; y += step {
		for _, in := range cut(Point{0, y}, Point{1, 0}, area) {
			n := max(int(math.Round((in.to-in.from)/step)), 1)
			for k := range n {
				x := in.from + (float64(k)+0.5)*(in.to-in.from)/float64(n)
				all = append(all, sample{at: Point{x, y}, length: (in.to - in.from) / float64(n)})
			}
		}
	}
	if len(all) == 0 {
		all = append(all, sample{at: area.Centroid(), length: 1e-9})
	}
	return all
}

// chain joins pieces that meet end to end (exactly two of them at a place) into
// one line each.
func chain(lines [][]Point) []Polyline {
	var all []Polyline
	for _, l := range lines {
		if p := Polyline(l); p.Length() > 0 {
			all = append(all, append(Polyline{}, p...))
		}
	}
	for {
		i, j, joined := nextJoin(all)
		if !joined {
			return all
		}
		all[i] = join(all[i], all[j])
		all = append(all[:j], all[j+1:]...)
	}
}

func nextJoin(all []Polyline) (int, int, bool) {
	for i := range all {
		for _, end := range ends(all[i]) {
			with, count := -1, 0
			for j := range all {
				for _, e := range ends(all[j]) {
					if e.To(end) <= chainReach {
						count++
						if j != i {
							with = j
						}
					}
				}
			}
			if with > i && count == 2 {
				return i, with, true
			}
		}
	}
	return 0, 0, false
}

func ends(l Polyline) []Point { return []Point{l[0], l[len(l)-1]} }

func join(a, b Polyline) Polyline {
	reverse := func(l Polyline) Polyline {
		r := make(Polyline, len(l))
		for i, p := range l {
			r[len(l)-1-i] = p
		}
		return r
	}
	best, out := math.Inf(1), Polyline{}
	for _, p := range []Polyline{a, reverse(a)} {
		for _, q := range []Polyline{b, reverse(b)} {
			if d := p[len(p)-1].To(q[0]); d < best {
				best, out = d, append(append(Polyline{}, p...), q...)
			}
		}
	}
	return out
}
