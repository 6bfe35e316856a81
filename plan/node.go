package plan

import (
	"math"
	"sort"
)

// SnapTolerance is how near two places must be to count as one, in metres. A saw
// line is set out to a few millimetres at best, so one millimetre changes nothing
// on site.
const SnapTolerance = 0.001

// network is the plan as points and edges that meet only at points.
type network struct {
	points []Point
	edges  []netEdge // from < to, no two alike
}

type netEdge struct{ from, to int }

// node splits the pieces where they cross, touch or run along one another and
// joins places nearer than tol. Cutting at a snapped place bends a piece by up to
// tol, which may make it touch another, so the pieces are gone over until no new
// place appears.
func node(pieces []Segment, tol float64) network {
	net := network{}
	var spans []netEdge
	for _, p := range pieces {
		spans = append(spans, netEdge{net.place(p.A, tol), net.place(p.B, tol)})
	}
	const mostRounds = 12 // two or three do; the bound keeps a wicked drawing finite
	for range mostRounds {
		before := len(net.points)
		for _, c := range net.crossings(spans, tol) {
			net.place(c, tol)
		}
		var next []netEdge
		for _, s := range spans {
			chain := net.along(s.from, s.to, tol)
			for k := 1; k < len(chain); k++ {
				next = append(next, netEdge{chain[k-1], chain[k]})
			}
		}
		settled := len(next) == len(spans) && len(net.points) == before
		spans = next
		if settled {
			break
		}
	}
	seen := map[netEdge]bool{}
	for _, s := range spans {
		e := netEdge{min(s.from, s.to), max(s.from, s.to)}
		if e.from != e.to && !seen[e] {
			seen[e] = true
			net.edges = append(net.edges, e)
		}
	}
	return net
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

// crossings returns the places where two of the spans cross away from their ends.
func (n *network) crossings(spans []netEdge, tol float64) []Point {
	segment := func(e netEdge) Segment { return Segment{n.points[e.from], n.points[e.to]} }
	var places []Point
	for i, e := range spans {
		a := segment(e)
		for _, f := range spans[i+1:] {
			b := segment(f)
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

// boxesApart reports whether the boxes round two segments are more than tol apart.
func boxesApart(a, b Segment, tol float64) bool {
	before := func(p, q, u, v float64) bool { return p+tol < u && p+tol < v && q+tol < u && q+tol < v }
	return before(a.A.X, a.B.X, b.A.X, b.B.X) || before(b.A.X, b.B.X, a.A.X, a.B.X) ||
		before(a.A.Y, a.B.Y, b.A.Y, b.B.Y) || before(b.A.Y, b.B.Y, a.A.Y, a.B.Y)
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
