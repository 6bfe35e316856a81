package mesh

import "math"

// check refuses input that cannot be read as an outline, holes and lines.
func (d *Domain) check() error {
	if err := d.checkOptions(); err != nil {
		return err
	}
	for _, paths := range [][][]Point{d.Outline, d.Holes, d.Lines, {d.Points}} {
		for _, path := range paths {
			for _, p := range path {
				if err := checkFinite(p); err != nil {
					return err
				}
			}
		}
	}
	if len(d.Outline) == 0 {
		return refuseWhole(TooFewPoints, "Give at least one outer ring.", "There is no outline")
	}
	snap := d.snapDistance()
	for _, kind := range [2]Kind{OnOutline, OnHole} {
		for i, ring := range [2][][]Point{d.Outline, d.Holes}[kind] {
			if err := checkRing(ring, kind, i, snap); err != nil {
				return err
			}
		}
	}
	for i, line := range d.Lines {
		if line == nil {
			continue
		}
		if err := checkLine(line, i, snap); err != nil {
			return err
		}
	}
	return nil
}

func checkFinite(p Point) error {
	if math.Abs(p[0]) < largestCoordinate && math.Abs(p[1]) < largestCoordinate {
		return nil
	}
	return refuse(NotFinite, p, "Give both coordinates as plain numbers.", "A coordinate is not a usable number")
}

func (d *Domain) checkOptions() error {
	option := func(name string, value, low, high float64) error {
		if value >= low && value <= high {
			return nil
		}
		return refuseWhole(BadOption, "Give a value in that range.",
			"%s is %g; allowed are %g to %g", name, value, low, high)
	}
	for _, err := range []error{
		option("MinAngle", d.MinAngle, 0, largestMinAngle),
		option("Finest", d.Finest, 0, largestCoordinate),
		option("Snap", d.Snap, 0, largestCoordinate),
		option("Gap", d.Gap, 0, largestCoordinate),
		option("Smooth", float64(d.Smooth), 0, 1000),
		option("MaxTriangles", float64(d.MaxTriangles), 0, 1<<28),
	} {
		if err != nil {
			return err
		}
	}
	if c, ok := d.Size.(interface{ check() error }); ok {
		return c.check()
	}
	return nil
}

// checkRing wants three points, not all in one place.
func checkRing(ring []Point, kind Kind, i int, snap float64) error {
	if len(ring) == 0 {
		return refuseWhole(TooFewPoints, "Give at least three points.", "The %s ring %d is empty", kind, i)
	}
	if len(ring) < 3 {
		return refuse(TooFewPoints, ring[0], "Give at least three points.", "The %s ring %d has %d points", kind, i, len(ring))
	}
	for _, p := range ring {
		if distance(p, ring[0]) > max(snap, smallestExtent) {
			return nil
		}
	}
	return refuse(ZeroArea, ring[0], "Give points apart.", "The %s ring %d has all its points in one place", kind, i)
}

// checkAreas refuses rings that run back on themselves. A ring whose lobes cancel
// crosses itself, and is named for that.
func (b *builder) checkAreas() error {
	for _, kind := range [2]Kind{OnOutline, OnHole} {
		for i, ring := range [2][][]Point{b.domain.Outline, b.domain.Holes}[kind] {
			around := 0.0
			for k, p := range ring {
				around += distance(p, ring[(k+1)%len(ring)])
			}
			area := math.Abs(ringArea(ring))
			if area > around*b.snap {
				continue
			}
			if len(b.nodes.crossings) > 0 {
				return b.explain(nil)
			}
			return refuse(ZeroArea, ring[0], "Check that its points do not all lie on one line or run back on themselves.",
				"The %s ring %d encloses no area (%.3g)", kind, i, area)
		}
	}
	return nil
}

// checkLine wants two points apart.
func checkLine(line []Point, i int, snap float64) error {
	if len(line) == 0 {
		return refuseWhole(TooFewPoints, "Give at least two points.", "Line %d is empty", i)
	}
	for _, p := range line {
		if distance(p, line[0]) > snap {
			return nil
		}
	}
	return refuse(TooFewPoints, line[0], "Give two points apart, or use a single point.",
		"Line %d has no length", i)
}

// snapDistance is Snap or its default, and never below rounding.
func (d *Domain) snapDistance() float64 {
	snap := d.Snap
	if snap == 0 {
		low, high := d.bounds()
		snap = defaultSnap * max(high[0]-low[0], high[1]-low[1], 0)
	}
	return max(snap, d.rounding())
}

// rounding is a distance well above what rounding can move a point by.
func (d *Domain) rounding() float64 {
	low, high := d.bounds()
	extent := max(high[0]-low[0], high[1]-low[1], 0)
	far := max(math.Abs(low[0]), math.Abs(low[1]), math.Abs(high[0]), math.Abs(high[1]))
	return max(smallestSnap*extent, 16*unitRoundoff*far, math.SmallestNonzeroFloat64)
}

func (d *Domain) bounds() (low, high Point) {
	var all []Point
	for _, ring := range d.Outline {
		all = append(all, ring...)
	}
	return bounds(all)
}

// finest is Finest or its default.
func (d *Domain) finest() float64 {
	if d.Finest > 0 {
		return d.Finest
	}
	low, high := d.bounds()
	return defaultFinest * max(high[0]-low[0], high[1]-low[1])
}

// checkGaps looks for a point nearer than Gap to a piece it is not joined to.
func (b *builder) checkGaps() error {
	gap := b.domain.Gap
	if gap <= b.snap {
		return nil
	}
	n := b.nodes
	joined := map[[2]int32]bool{}
	for _, p := range n.pieces {
		joined[[2]int32{p.a, p.b}], joined[[2]int32{p.b, p.a}] = true, true
	}
	grid := newPieceGrid(n.weld.points, n.pieces, gap)
	var found *Error
	nearest := gap
	for _, p := range n.pieces {
		from, to := n.weld.points[p.a], n.weld.points[p.b]
		grid.pointsNear(from, to, func(v int32) {
			if v == p.a || v == p.b || joined[[2]int32{v, p.a}] || joined[[2]int32{v, p.b}] {
				return
			}
			at := n.weld.points[v]
			if _, away := nearestOn(from, to, at); away < nearest {
				nearest = away
				found = refuse(SmallGap, at, "Move one onto the other or farther away.",
					"A point is %.3g from the %s %d; the smallest gap allowed is %.3g", away,
					n.sources[p.source].Kind, n.sources[p.source].Index, gap)
			}
		})
	}
	if found != nil {
		return found
	}
	return nil
}

// explain turns a misfit into a message, naming the nearest crossing of rings when
// there is one.
func (b *builder) explain(m *misfit) error {
	if len(b.nodes.crossings) > 0 {
		c := b.nodes.crossings[0]
		for _, other := range b.nodes.crossings {
			if m != nil && distance(other.at, m.at) < distance(c.at, m.at) {
				c = other
			}
		}
		if c.same {
			return refuse(SelfCrossing, c.at, "Reorder its points or split it in two rings.",
				"The %s ring %d crosses itself", c.one.Kind, c.one.Index)
		}
		return refuse(RingsCross, c.at, "Rings may touch but not cross; move one or join them.",
			"The %s ring %d crosses the %s ring %d", c.one.Kind, c.one.Index, c.two.Kind, c.two.Index)
	}
	switch {
	case m.depth.outer == 0 && m.depth.hole == 1:
		return refuse(OutsideHole, m.at, "Move the hole inside the outline.", "A hole lies outside the outline")
	case m.depth.hole > 1 && m.depth.outer > 0:
		return refuse(RingsOverlap, m.at, "Join them into one hole.", "Two holes overlap")
	case m.depth.outer > 1:
		return refuse(RingsOverlap, m.at, "Join them into one ring, or give the inner one as a hole.",
			"Two outer rings overlap, or one goes around the same place twice")
	}
	return refuse(SelfCrossing, m.at, "Reorder its points or split it in two rings.",
		"A ring turns inside out")
}

// checkInside refuses lines and points that have nothing inside the outline.
func (b *builder) checkInside() error {
	if len(b.t.corner) == 0 {
		return refuse(ZeroArea, b.domain.Outline[0][0], "Check the outline and the holes.", "Holes cover the whole outline")
	}
	for i, v := range b.nodes.single {
		if b.t.around[v] < 0 {
			return refuse(OutsidePoint, b.domain.Points[i], "Move it inside or leave it out.", "Point %d lies outside the outline or in a hole", i)
		}
	}
	shown := make([]bool, len(b.domain.Lines))
	b.hidden = make([]bool, len(b.segments))
	for i := range b.segments {
		s := &b.segments[i]
		if b.hidden[i] = !b.shows(s); !b.hidden[i] {
			for _, mark := range b.table.sets[s.set] {
				if mark.Kind == OnLine {
					shown[mark.Index] = true
				}
			}
		}
	}
	for i, ok := range shown {
		if !ok && b.domain.Lines[i] != nil {
			return refuse(OutsideLine, b.domain.Lines[i][0], "Move it inside or leave it out.", "Line %d lies wholly outside the outline or in a hole", i)
		}
	}
	return nil
}

// shows tells whether a segment is a side of the carved triangulation.
func (b *builder) shows(s *segment) bool {
	if b.t.around[s.a] < 0 || b.t.around[s.b] < 0 {
		return false
	}
	side := b.t.sideBetween(s.a, s.b)
	return side >= 0 && b.t.segmentOf(side) >= 0
}
