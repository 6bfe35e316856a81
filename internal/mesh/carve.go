package mesh

// A carver finds which triangles lie inside the outline and outside the holes.
type carver struct {
	t        *triangulation
	segments []segment
	seen     []bool
	depth    []depth
}

// depth counts the outer rings and the holes around a triangle.
type depth struct{ outer, hole int32 }

// A misfit is a triangle whose depth no proper input gives.
type misfit struct {
	at    Point
	depth depth
}

// carve floods from the box inward, counting rings at each segment crossed, and
// drops every triangle that is not exactly inside one outer ring and no hole.
// It reports the first misfit, and none if all is well.
func (t *triangulation) carve(segments []segment) *misfit {
	c := carver{t: t, segments: segments,
		seen: make([]bool, len(t.corner)), depth: make([]depth, len(t.corner))}
	start := t.around[0] >> 2
	c.seen[start] = true
	queue := []int32{start}
	for len(queue) > 0 {
		tri := queue[len(queue)-1]
		queue = queue[:len(queue)-1]
		for i := range int32(3) {
			side := 4*tri + i
			twin := t.twin(side)
			if twin < 0 || c.seen[twin>>2] {
				continue
			}
			c.seen[twin>>2] = true
			c.depth[twin>>2] = c.beyond(side)
			queue = append(queue, twin>>2)
		}
	}
	if m := c.misfit(); m != nil {
		return m
	}
	for tri := range t.corner {
		if t.alive(int32(tri)) && (c.depth[tri] != depth{1, 0}) {
			t.cutOff(int32(tri))
		}
	}
	t.compact(boxPoints)
	return nil
}

// beyond is the depth on the other side of a side.
func (c *carver) beyond(side int32) depth {
	d := c.depth[side>>2]
	if s := c.t.segmentOf(side); s >= 0 {
		seg := &c.segments[s]
		// The triangle lies left of its own side, so going out crosses to the right.
		sign := int32(-1)
		if !c.along(side, seg) {
			sign = 1
		}
		d.outer += sign * seg.outer
		d.hole += sign * seg.hole
	}
	return d
}

// along tells whether a side runs the way of its segment. A segment laid in
// parts is compared by direction.
func (c *carver) along(side int32, seg *segment) bool {
	from, to := c.t.points[c.t.start(side)], c.t.points[c.t.end(side)]
	a, b := c.t.points[seg.a], c.t.points[seg.b]
	return (to[0]-from[0])*(b[0]-a[0])+(to[1]-from[1])*(b[1]-a[1]) > 0
}

// misfit finds the largest triangle that is in two outer rings, in two holes, in
// a hole outside every outer ring, or inside out.
func (c *carver) misfit() *misfit {
	var worst *misfit
	largest := 0.0
	for tri, d := range c.depth {
		fits := d == depth{0, 0} || d == depth{1, 0} || d == depth{1, 1}
		if fits || !c.t.alive(int32(tri)) {
			continue
		}
		p, q, r := c.t.place(int32(tri))
		if area := Orient(p, q, r); area > largest {
			largest = area
			worst = &misfit{at: middle(p, q, r), depth: d}
		}
	}
	return worst
}

func middle(a, b, c Point) Point {
	return Point{(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3}
}

// cutOff takes a triangle away and leaves its neighbours on the rim.
func (t *triangulation) cutOff(tri int32) {
	for i := range int32(3) {
		if twin := t.corner[tri].twin[i]; twin >= 0 {
			t.corner[twin>>2].twin[twin&3] = -1
		}
	}
	t.corner[tri].seg[3] = dead
}

// compact renumbers so that no dead triangle is left, and drops the first points.
// Points without a triangle stay, with around −1.
func (t *triangulation) compact(dropped int32) {
	to := make([]int32, len(t.corner))
	live := int32(0)
	for tri := range t.corner {
		if t.alive(int32(tri)) {
			to[tri] = live
			live++
		}
	}
	t.points = t.points[dropped:]
	t.around = t.around[dropped:]
	for i := range t.around {
		t.around[i] = -1
	}
	for tri, k := range t.corner {
		if !t.alive(int32(tri)) {
			continue
		}
		for i := range 3 {
			k.v[i] -= dropped
			if k.twin[i] >= 0 {
				k.twin[i] = 4*to[k.twin[i]>>2] + k.twin[i]&3
			}
			t.around[k.v[i]] = 4*to[tri] + int32(i)
		}
		k.twin[3] = 0
		t.corner[to[tri]] = k
	}
	t.corner = t.corner[:live]
	t.free = t.free[:0]
	t.stamp, t.last = 0, 0
}
