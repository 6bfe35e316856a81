package plan

import "math"

// dowelled says whether bars cross the joint; nil when nobody knows.
func (j Joint) dowelled() *bool {
	var yes bool
	switch {
	case j.Dowels != nil:
		yes = true
	case j.Transfer == nil:
		return nil
	default:
		yes = j.Transfer.Is("dowelled") || j.Transfer.Is("tied")
	}
	return &yes
}

// dowelEnds fills the nearest line of dowel ends that the finding runs along. A
// line square to the joint passes the bar ends too, but says nothing of them.
func (t *traced) dowelEnds() {
	for _, j := range t.slab.Joints {
		path := Polyline(j.Path)
		if j.Dowels == nil || j.Dowels.Length == nil || path.Length() == 0 {
			continue
		}
		if _, runs := t.beside(boundary{id: j.ID, kind: string(j.Kind), line: path}); !runs {
			continue
		}
		half := j.Dowels.Length.Value / 2
		off := func(p Point) float64 {
			_, _, d := path.Nearest(p)
			return math.Abs(d - half)
		}
		d := DowelEnd{Joint: j.ID, Half: half, Distance: t.least(off),
			Mean:  t.mean(func(p sample) float64 { return off(p.at) }),
			Share: t.share(func(p sample) bool { return off(p.at) <= OverReach })}
		if best := t.rel.DowelEnd; best == nil || d.Mean < best.Mean {
			t.rel.DowelEnd = &d
		}
	}
}

// bars fills how much of the finding lies over located bars that run its way. A
// line square to the bars crosses them at every pitch; that is no match.
func (t *traced) bars() {
	if t.longest < 0 {
		return
	}
	for _, z := range t.slab.Steel {
		u, ok := t.over(z)
		if !ok {
			continue
		}
		if best := t.rel.Bars; best == nil || u.Share > best.Share {
			t.rel.Bars = &u
		}
	}
}

// over measures the finding against the bars of one zone; false when they are not
// located or lie elsewhere.
func (t *traced) over(z BarZone) (BarsUnder, bool) {
	bars := t.slab.BarLines(z)
	if len(bars) == 0 {
		return BarsUnder{}, false
	}
	var sum, weight, over float64
	for _, p := range t.points {
		d := p.nearestAlong(bars)
		if math.IsInf(d, 1) {
			continue
		}
		sum, weight = sum+d*p.length, weight+p.length
		if d <= OverReach {
			over += p.length
		}
	}
	u := BarsUnder{Zone: z.ID, Share: over / t.total()}
	if weight > 0 {
		u.Mean = value(sum / weight)
	}
	return u, weight > 0 || t.zoneHolds(z)
}

// nearestAlong returns the distance to the nearest bar that runs within BesideAngle
// of the line there, or infinity.
func (p sample) nearestAlong(bars []Bar) float64 {
	best := math.Inf(1)
	for _, b := range bars {
		s := b.Segment()
		if axesApart(axisDegrees(s.B.Minus(s.A)), axisDegrees(p.dir)) > BesideAngle {
			continue
		}
		_, d := s.Nearest(p.at)
		best = math.Min(best, d)
	}
	return best
}

func (t *traced) zoneHolds(z BarZone) bool {
	return len(z.Area) < 3 || Ring(z.Area).Contains(t.rel.Centre)
}
