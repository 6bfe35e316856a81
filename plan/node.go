package plan

import (
	"math"
	"sort"
)

// SnapTolerance is how near two places must be to count as one, in metres. A saw
// line is set out to a few millimetres at best, so one millimetre changes nothing
// on site.
const SnapTolerance = 0.001

// labelled is a straight piece that may split the slab, with what it belongs to.
type labelled struct {
	Segment
	label int // index into the labels of the arrangement
}

// network is the plan as points and edges that meet only at points.
type network struct {
	points []Point
	edges  []netEdge // from < to, no two alike
}

type netEdge struct {
	from, to int
	labels   []int // ascending, each once
}

// node splits the pieces where they cross, touch or run along one another and
// joins places nearer than tol. Cutting at a snapped place bends a piece by up to
// tol, which may make it touch another, so the pieces are gone over until no new
// place appears.
func node(pieces []labelled, tol float64) network {
	net := network{}
	type span struct{ from, to, label int }
	var spans []span
	for _, p := range pieces {
		spans = append(spans, span{net.place(p.A, tol), net.place(p.B, tol), p.label})
	}
	for range 12 {
		crossings := net.crossings(len(spans), func(i int) Segment {
			return Segment{net.points[spans[i].from], net.points[spans[i].to]}
		}, tol)
		before := len(net.points)
		for _, c := range crossings {
			net.place(c, tol)
		}
		var next []span
		for _, s := range spans {
			chain := net.along(s.from, s.to, tol)
			for k := 1; k < len(chain); k++ {
				next = append(next, span{chain[k-1], chain[k], s.label})
			}
		}
		settled := len(next) == len(spans) && len(net.points) == before
		spans = next
		if settled {
			break
		}
	}
	byEnds := map[[2]int]int{}
	for _, s := range spans {
		key := [2]int{min(s.from, s.to), max(s.from, s.to)}
		if key[0] == key[1] {
			continue
		}
		i, ok := byEnds[key]
		if !ok {
			i = len(net.edges)
			byEnds[key] = i
			net.edges = append(net.edges, netEdge{from: key[0], to: key[1]})
		}
		net.edges[i].labels = addLabel(net.edges[i].labels, s.label)
	}
	return net
}

func addLabel(labels []int, label int) []int {
	i := sort.SearchInts(labels, label)
	if i < len(labels) && labels[i] == label {
		return labels
	}
	labels = append(labels, 0)
	copy(labels[i+1:], labels[i:])
	labels[i] = label
	return labels
}

// place returns the number of the point within tol of p, made new if there is none.
func (n *network) place(p Point, tol float64) int {
	best, at := tol, -1
	for i, q := range n.points {
		if math.Abs(q.X-p.X) > tol || math.Abs(q.Y-p.Y) > tol {
			continue
		}
		if d := p.To(q); d <= best {
			best, at = d, i
		}
	}
	if at < 0 {
		n.points = append(n.points, p)
		at = len(n.points) - 1
	}
	return at
}

// crossings returns the places where two of the segments cross away from their
// ends.
func (n *network) crossings(count int, segment func(int) Segment, tol float64) []Point {
	var places []Point
	for i := range count {
		a := segment(i)
		for j := i + 1; j < count; j++ {
			b := segment(j)
			if boxesApart(a, b, tol) {
				continue
			}
			if t, _, ok := a.Cross(b); ok {
				places = append(places, a.At(t))
			}
		}
	}
	return places
}

func boxesApart(a, b Segment, tol float64) bool {
	return math.Max(a.A.X, a.B.X)+tol < math.Min(b.A.X, b.B.X) || math.Max(b.A.X, b.B.X)+tol < math.Min(a.A.X, a.B.X) ||
		math.Max(a.A.Y, a.B.Y)+tol < math.Min(b.A.Y, b.B.Y) || math.Max(b.A.Y, b.B.Y)+tol < math.Min(a.A.Y, a.B.Y)
}

// along returns the points within tol of the straight line between two points, in
// order, both ends included.
func (n *network) along(from, to int, tol float64) []int {
	if from == to {
		return []int{from}
	}
	s := Segment{n.points[from], n.points[to]}
	type stop struct {
		t     float64
		point int
	}
	var stops []stop
	for i, p := range n.points {
		if i == from || i == to || boxesApart(s, Segment{p, p}, tol) {
			continue
		}
		if t, d := s.Nearest(p); d <= tol && t > 0 && t < 1 {
			stops = append(stops, stop{t, i})
		}
	}
	sort.Slice(stops, func(i, j int) bool {
		if stops[i].t != stops[j].t {
			return stops[i].t < stops[j].t
		}
		return stops[i].point < stops[j].point
	})
	chain := []int{from}
	for _, st := range stops {
		chain = append(chain, st.point)
	}
	return append(chain, to)
}
