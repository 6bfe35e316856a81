package plan

import "sort"

// Crossing is a place where two joints cross or one meets the other.
type Crossing struct {
	At     Point     `json:"at"`
	Joints [2]string `json:"joints"`
	Tee    bool      `json:"tee"` // one of them stops here
}

// Crossings returns every place where two joints cross or meet, in the order of
// the joints.
func (s Slab) Crossings() []Crossing {
	var all []Crossing
	for i, a := range s.Joints {
		for k := i + 1; k < len(s.Joints); k++ {
			b := s.Joints[k]
			for _, p := range joining(a.Path, b.Path) {
				all = append(all, Crossing{At: p, Joints: [2]string{a.ID, b.ID}, Tee: endsAt(a.Path, p) || endsAt(b.Path, p)})
			}
		}
	}
	return all
}

// joining returns where two lines cross, or an end of one lies within JointReach of
// the other; places within JointReach of one another count once.
func joining(a, b Polyline) []Point {
	var places []Point
	add := func(p Point) {
		for _, q := range places {
			if p.To(q) <= JointReach {
				return
			}
		}
		places = append(places, p)
	}
	for _, s := range a.Pieces() {
		for _, o := range b.Pieces() {
			if boxesApart(s, o, 0) {
				continue
			}
			if t, _, ok := s.Cross(o); ok {
				add(s.At(t))
			}
		}
	}
	for _, pair := range [][2]Polyline{{a, b}, {b, a}} {
		line, other := pair[0], pair[1]
		if len(line) == 0 {
			continue
		}
		for _, end := range []Point{line[0], line[len(line)-1]} {
			if _, at, d := other.Nearest(end); d <= JointReach {
				add(at)
			}
		}
	}
	return places
}

func endsAt(path Polyline, p Point) bool {
	return len(path) > 0 && (path[0].To(p) <= JointReach || path[len(path)-1].To(p) <= JointReach)
}

// distinct returns the values in order, those within tol of the one before left
// out.
func distinct(values []float64, tol float64) []float64 {
	sort.Float64s(values)
	kept := values[:1]
	for _, v := range values[1:] {
		if v-kept[len(kept)-1] > tol {
			kept = append(kept, v)
		}
	}
	return kept
}
