package mesh

import "slices"

// A piece is a straight bit of one input, from point a to point b.
type piece struct {
	a, b   int32
	source int32
}

// A crossing is a place where two inputs cut through each other.
type crossing struct {
	at   Point
	one  Mark
	two  Mark
	same bool
}

// A noding is the input cut up so that pieces meet only at their ends.
type noding struct {
	weld      *welder
	pieces    []piece
	sources   []Mark
	crossings []crossing // of rings only
	single    []int32    // point number of each Domain.Points
}

// mostRounds stops cutting that never settles. Every round moves a piece by at
// most the snap distance; real inputs settle in two to four.
const mostRounds = 40

// cutUp numbers the points of d and cuts rings and lines where they meet.
func cutUp(d *Domain, snap float64) (*noding, error) {
	n := &noding{weld: newWelder(snap)}
	for i, ring := range d.Outline {
		n.addPath(ring, Mark{OnOutline, int32(i)})
	}
	for i, ring := range d.Holes {
		n.addPath(ring, Mark{OnHole, int32(i)})
	}
	for i, line := range d.Lines {
		n.addPath(line, Mark{OnLine, int32(i)})
	}
	for _, p := range d.Points {
		n.single = append(n.single, n.weld.number(p))
	}
	return n, n.settle()
}

// settle cuts until nothing is left to cut.
func (n *noding) settle() error {
	for round := 0; ; round++ {
		at, changed := n.round()
		if !changed {
			return nil
		}
		if round == mostRounds {
			return refuse(Tangled, n.weld.points[at], "Draw the lines there farther apart or exactly on each other.",
				"Lines run so close together that they cannot be told apart")
		}
	}
}

// addPath adds the sides of a ring (closed) or of a line.
func (n *noding) addPath(path []Point, mark Mark) {
	source := int32(len(n.sources))
	n.sources = append(n.sources, mark)
	before := int32(-1)
	for i := range path {
		before = n.addSide(before, n.weld.number(path[i]), source)
	}
	if mark.Kind != OnLine && len(path) > 0 {
		n.addSide(before, n.weld.number(path[0]), source)
	}
}

func (n *noding) addSide(a, b, source int32) int32 {
	if a >= 0 && a != b {
		n.pieces = append(n.pieces, piece{a, b, source})
	}
	return b
}

// A cut puts point v on a piece, at t along it.
type cut struct {
	piece, v int32
	t        float64
}

// round cuts every piece at the points that lie on it and at the pieces that
// cross it. It reports a point that caused a cut.
func (n *noding) round() (at int32, changed bool) {
	grid := newPieceGrid(n.weld.points, n.pieces, n.weld.snap)
	var cuts []cut
	for i := range n.pieces {
		cuts = n.cutsAtPoints(grid, int32(i), cuts)
	}
	grid.pairs(func(i, j int32) { cuts = n.cutsAtCrossing(i, j, cuts) })
	if len(cuts) == 0 {
		return 0, false
	}
	n.apply(cuts)
	return cuts[0].v, true
}

// cutsAtPoints finds the points within snap of piece i other than its ends.
func (n *noding) cutsAtPoints(grid *pieceGrid, i int32, cuts []cut) []cut {
	p := n.pieces[i]
	a, b := n.weld.points[p.a], n.weld.points[p.b]
	grid.pointsNear(a, b, func(v int32) {
		if v == p.a || v == p.b {
			return
		}
		if t, away := nearestOn(a, b, n.weld.points[v]); away <= n.weld.snap {
			cuts = append(cuts, cut{i, v, t})
		}
	})
	return cuts
}

// cutsAtCrossing finds where pieces i and j cut through each other.
func (n *noding) cutsAtCrossing(i, j int32, cuts []cut) []cut {
	p, q := n.pieces[i], n.pieces[j]
	if p.a == q.a || p.a == q.b || p.b == q.a || p.b == q.b {
		return cuts
	}
	at := n.weld.points
	place, crosses := crossingOf(at[p.a], at[p.b], at[q.a], at[q.b])
	if !crosses {
		return cuts
	}
	v := n.weld.number(place)
	one, two := n.sources[p.source], n.sources[q.source]
	if one.Kind != OnLine && two.Kind != OnLine {
		n.crossings = append(n.crossings, crossing{place, one, two, one == two})
	}
	for _, k := range [2]int32{i, j} {
		if pk := n.pieces[k]; v != pk.a && v != pk.b {
			t, _ := nearestOn(n.weld.points[pk.a], n.weld.points[pk.b], n.weld.points[v])
			cuts = append(cuts, cut{k, v, t})
		}
	}
	return cuts
}

// crossingOf returns where a–b and c–d cut through each other, if they do.
func crossingOf(a, b, c, d Point) (Point, bool) {
	if max(a[0], b[0]) < min(c[0], d[0]) || max(c[0], d[0]) < min(a[0], b[0]) ||
		max(a[1], b[1]) < min(c[1], d[1]) || max(c[1], d[1]) < min(a[1], b[1]) {
		return Point{}, false
	}
	sideA, sideB := Orient(c, d, a), Orient(c, d, b)
	if sideA*sideB >= 0 && (sideA == 0 || sideB == 0 || (sideA > 0) == (sideB > 0)) {
		return Point{}, false
	}
	sideC, sideD := Orient(a, b, c), Orient(a, b, d)
	if sideC == 0 || sideD == 0 || (sideC > 0) == (sideD > 0) {
		return Point{}, false
	}
	return between(a, b, sideA/(sideA-sideB)), true
}

// apply replaces every cut piece by its parts.
func (n *noding) apply(cuts []cut) {
	slices.SortFunc(cuts, func(x, y cut) int {
		switch {
		case x.piece != y.piece:
			return int(x.piece - y.piece)
		case x.t < y.t:
			return -1
		case x.t > y.t:
			return 1
		}
		return int(x.v - y.v)
	})
	old := n.pieces
	n.pieces = make([]piece, 0, len(old)+len(cuts))
	k := 0
	for i, p := range old {
		before := p.a
		for ; k < len(cuts) && cuts[k].piece == int32(i); k++ {
			before = n.addSide(before, cuts[k].v, p.source)
		}
		n.addSide(before, p.b, p.source)
	}
}
