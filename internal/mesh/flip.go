package mesh

// legalise turns sides until no triangle has a corner it sees inside its circle.
// It starts from the given sides, which may go out of use on the way, and adds the
// triangles it changes to those made.
//
// Source: Lawson, Software for C1 surface interpolation, in Mathematical Software
// III (1977), 161-194.
func (t *triangulation) legalise(sides []int32) {
	for len(sides) > 0 {
		side := sides[len(sides)-1]
		sides = sides[:len(sides)-1]
		twin := t.twin(side)
		if !t.alive(side>>2) || twin < 0 || t.segmentOf(side) >= 0 {
			continue
		}
		a, b, c := t.place(side >> 2)
		if InCircle(a, b, c, t.points[t.apex(twin)]) <= 0 {
			continue
		}
		t.flip(side)
		t.made = append(t.made, side>>2, twin>>2)
		sides = append(sides, next(side), previous(side), next(twin), previous(twin))
	}
}

// legaliseMade does so for the triangles of the latest fill.
func (t *triangulation) legaliseMade() {
	var sides []int32
	for _, tri := range t.made {
		sides = append(sides, 4*tri, 4*tri+1, 4*tri+2)
	}
	t.legalise(sides)
}

// flip turns a side so that it joins the two corners across from it.
func (t *triangulation) flip(side int32) {
	twin := t.twin(side)
	a, b, c, d := t.start(side), t.end(side), t.apex(side), t.apex(twin)
	outer := [4]int32{t.twin(next(side)), t.twin(previous(side)), t.twin(next(twin)), t.twin(previous(twin))}
	seg := [4]int32{t.segmentOf(next(side)), t.segmentOf(previous(side)), t.segmentOf(next(twin)), t.segmentOf(previous(twin))}
	// Side runs from d to c now, its twin from c to d.
	t.put(side, [3]int32{d, c, a})
	t.put(twin, [3]int32{c, d, b})
	t.join(side, twin)
	for _, k := range [4]struct{ side, from int32 }{{next(side), 1}, {previous(side), 2}, {next(twin), 3}, {previous(twin), 0}} {
		t.join(k.side, outer[k.from])
		t.corner[k.side>>2].seg[k.side&3] = seg[k.from]
	}
}

// put writes the corners of a triangle, the first where the given side starts.
func (t *triangulation) put(side int32, v [3]int32) {
	k := &t.corner[side>>2]
	for range 3 {
		k.v[side&3] = v[0]
		k.seg[side&3] = -1
		t.around[v[0]] = side
		v[0], v[1], v[2] = v[1], v[2], v[0]
		side = next(side)
	}
	k.v[3]++
	t.last = side >> 2
}
