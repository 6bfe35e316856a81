package flexure

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"slabwright/internal/fem"
	"slabwright/plan"
)

// gridNet meshes in rectangles between straight lines.
func (p Plate) gridNet(paths []plan.Polyline, parted []bool, loads []Load, like *net) (*net, error) {
	n := &net{kind: fem.BFS}
	if p.theory() == Thick {
		n.kind = fem.MITC4
	}
	xs, ys := n.gridLines(p, paths, loads, like)
	if len(xs)*len(ys) > tooMany {
		return nil, fmt.Errorf("elements of this size would be %d: take them larger, or fewer loads at a time", len(xs)*len(ys))
	}
	whole := fem.GridMesh(fem.Q4, xs, ys, func(x, y float64) bool { return p.onSlab(plan.Point{X: x, Y: y}) })
	if whole.Elements() == 0 {
		return nil, errors.New("nothing is left of the slab: look at its openings")
	}
	var along [][2]int32
	for _, s := range innerSides(whole) {
		mid := plan.Point{X: (whole.X[s[0]] + whole.X[s[1]]) / 2, Y: (whole.Y[s[0]] + whole.Y[s[1]]) / 2}
		if j := onJoint(mid, paths, parted); j >= 0 && onPath(whole, s, paths[j]) {
			along = append(along, s)
		}
	}
	cut, nodes, _ := whole.Cut(along)
	n.mesh = cut
	for k := 0; k < len(nodes); k += 4 {
		f := [4]int32(nodes[k : k+4])
		j := onJoint(n.at(f[0]).Plus(n.at(f[1])).Times(0.5), paths, parted)
		n.addFace(f, j, paths[j])
	}
	return n, nil
}

// innerSides lists the sides between two elements, in the order of the elements.
func innerSides(m *fem.Mesh) (sides [][2]int32) {
	count := map[[2]int32]int{}
	for e := range m.Elements() {
		of := m.Of(e)
		for k, a := range of {
			b := of[(k+1)%len(of)]
			key := [2]int32{min(a, b), max(a, b)}
			if count[key]++; count[key] == 2 {
				sides = append(sides, key)
			}
		}
	}
	return sides
}

// onJoint returns the first parting joint through a place, −1 if none.
func onJoint(at plan.Point, paths []plan.Polyline, parted []bool) int {
	for j, path := range paths {
		if !parted[j] || len(path) < 2 {
			continue
		}
		if _, _, d := path.Nearest(at); d < 10*straight {
			return j
		}
	}
	return -1
}

// onPath says whether both ends of a side lie on a joint.
func onPath(m *fem.Mesh, side [2]int32, path plan.Polyline) bool {
	for _, n := range side {
		if _, _, d := path.Nearest(plan.Point{X: m.X[n], Y: m.Y[n]}); d > 10*straight {
			return false
		}
	}
	return true
}

// tooMany is how many elements are refused.
const tooMany = 250_000

// mostCells is about how many rectangles a grid may have before it is made coarser.
const mostCells = 16_000

// gridLines returns the straight lines of the grid: all edges, joints, zones and
// loads lie on them, and between them lines crowd towards loads and inside corners.
// With many loads it is made coarser all over until it has few enough rectangles.
func (n *net) gridLines(p Plate, paths []plan.Polyline, loads []Load, like *net) (xs, ys []float64) {
	if like == nil {
		like = &net{}
	}
	for coarser := 1.0; ; coarser *= 1.2 {
		x, y := p.stopsFor(paths, loads, coarser)
		xs, n.parts[0] = x.lines(p.size()*coarser, like.parts[0])
		ys, n.parts[1] = y.lines(p.size()*coarser, like.parts[1])
		if len(xs)*len(ys) <= mostCells || coarser > 10 || p.Size > 0 || p.Fine > 0 {
			return xs, ys
		}
	}
}

// stopsFor lists where lines of the grid go along each axis.
func (p Plate) stopsFor(paths []plan.Polyline, loads []Load, coarser float64) (x, y *stops) {
	x, y = &stops{}, &stops{}
	need := func(points []plan.Point) {
		for _, q := range points {
			x.need(q.X)
			y.need(q.Y)
		}
	}
	for _, r := range p.rings() {
		need(r)
	}
	for _, l := range paths {
		need(l)
	}
	wish := func(q plan.Point, fine float64) {
		x.wish(q.X, fine*coarser)
		y.wish(q.Y, fine*coarser)
	}
	for _, l := range loads {
		low, high := l.box()
		for _, q := range [3]plan.Point{low, high, low.Plus(high).Times(0.5)} {
			wish(q, p.fineUnder(l))
		}
	}
	if len(loads) > 0 {
		for _, q := range p.sharpPlaces() {
			wish(q, p.size()*atSharp)
		}
	}
	return x, y
}

// stops are places along an axis where a line of the grid goes.
type stops struct {
	at, fine []float64 // fine 0 for no wish
	wishes   [][2]float64
}

// need puts a line at a place.
func (s *stops) need(at float64) {
	s.at, s.fine = append(s.at, at), append(s.fine, 0)
}

// wish asks for a line at a place with steps of a size beside it.
func (s *stops) wish(at, fine float64) { s.wishes = append(s.wishes, [2]float64{at, fine}) }

// growth is how much longer each step of the grid may be than the one before.
const growth = 1.25

// lines returns the lines of the grid. A wish near a place that has a line makes that
// one fine instead.
func (s *stops) lines(most float64, like []int) (lines []float64, parts []int) {
	s.sort(straight)
	if len(s.wishes) == 0 {
		parts = evenParts(s.at, most, like)
		return fem.EqualLines(s.at, parts), parts
	}
	low, high := s.at[0], s.at[len(s.at)-1]
	for _, w := range s.wishes {
		if w[0] < low || w[0] > high {
			continue
		}
		i := nearest(s.at, w[0])
		if math.Abs(s.at[i]-w[0]) < 0.4*w[1] {
			if s.fine[i] == 0 || w[1] < s.fine[i] {
				s.fine[i] = w[1]
			}
			continue
		}
		s.at, s.fine = append(s.at, w[0]), append(s.fine, w[1])
	}
	s.sort(straight)
	return fem.GradedLines(s.at, s.fine, growth, most), nil
}

// sort puts stops in order and drops those on top of each other.
func (s *stops) sort(tolerance float64) {
	order := make([]int, len(s.at))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case s.at[a] < s.at[b]:
			return -1
		case s.at[a] > s.at[b]:
			return 1
		}
		return 0
	})
	var at, fine []float64
	for _, i := range order {
		if k := len(at) - 1; k >= 0 && s.at[i]-at[k] < tolerance {
			if s.fine[i] > 0 && (fine[k] == 0 || s.fine[i] < fine[k]) {
				fine[k] = s.fine[i]
			}
			continue
		}
		at, fine = append(at, s.at[i]), append(fine, s.fine[i])
	}
	s.at, s.fine = at, fine
}

func nearest(values []float64, v float64) int {
	best := 0
	for i, x := range values {
		if math.Abs(x-v) < math.Abs(values[best]-v) {
			best = i
		}
	}
	return best
}

// evenParts returns in how many equal steps no longer than most each gap between
// stops is parted. The numbers of a grid before are kept while steps are no longer
// than half as much again.
func evenParts(at []float64, most float64, like []int) []int {
	parts := make([]int, len(at)-1)
	keep := len(like) == len(parts)
	for i := range parts {
		parts[i] = max(1, int(math.Ceil((at[i+1]-at[i])/most-1e-9)))
		keep = keep && (at[i+1]-at[i])/float64(like[i]) <= 1.5*most && like[i] <= 3*parts[i]+1
	}
	if keep {
		return like
	}
	return parts
}
