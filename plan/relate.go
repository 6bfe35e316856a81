package plan

import "math"

// traced is a finding made ready to be measured.
type traced struct {
	slab    Slab
	panels  []Panel
	panel   *Panel // holding most of it
	lines   []Polyline
	longest int // of lines, -1 when there is none
	points  []sample
	others  []Polyline
	rel     *Relation
}

// Relate works out everything the plan says of a finding given by its lines, its
// area, or both. Others are further cracks it may be in line with. The slab should
// have passed [Slab.Check]; panels come from [Slab.Panels].
func Relate(s Slab, panels []Panel, lines [][]Point, area []Point, others ...[]Point) Relation {
	rel := Relation{}
	t := traced{slab: s, panels: panels, rel: &rel, longest: -1}
	for _, l := range others {
		t.others = append(t.others, finite(l))
	}
	area = finite(area)
	t.take(lines, area)
	if len(t.points) == 0 {
		return rel
	}
	t.place(area)
	t.course()
	t.nearLines()
	t.endings()
	t.corners()
	t.inLine()
	t.crossing()
	t.dowelEnds()
	t.bars()
	t.spacing()
	t.follows()
	t.fixture()
	t.cornerCut()
	return rel
}

// take makes the finding's lines and the points that stand for it: along the
// lines, else over the area, else the bare points.
func (t *traced) take(lines [][]Point, area []Point) {
	clean := make([][]Point, len(lines))
	for i, l := range lines {
		clean[i] = finite(l)
	}
	t.lines = chain(clean)
	for i, l := range t.lines {
		t.points = append(t.points, l.samples(sampleStep)...)
		if t.longest < 0 || l.Length() > t.lines[t.longest].Length() {
			t.longest = i
		}
	}
	if len(t.points) == 0 && len(area) >= 3 {
		t.points = areaSamples(area)
	}
	if len(t.points) == 0 {
		t.points = singles(clean, area)
	}
}

// mean returns the mean of a measure over the finding, weighted by length.
func (t *traced) mean(measure func(sample) float64) float64 {
	var sum, weight float64
	for _, p := range t.points {
		sum += measure(p) * p.length
		weight += p.length
	}
	return sum / weight
}

// share returns the part of the finding for which the test holds.
func (t *traced) share(test func(sample) bool) float64 {
	return t.mean(func(p sample) float64 {
		if test(p) {
			return 1
		}
		return 0
	})
}

// place fills where the finding is.
func (t *traced) place(area Ring) {
	r := t.rel
	r.Centre = Point{t.mean(func(p sample) float64 { return p.at.X }), t.mean(func(p sample) float64 { return p.at.Y })}
	held := make([]float64, len(t.panels))
	for _, p := range t.points {
		for i := range t.panels {
			if t.panels[i].holds(p.at) {
				held[i] += p.length
			}
		}
	}
	best := -1
	for i, h := range held {
		if h > 0 {
			r.Panels = append(r.Panels, t.panels[i].ID)
			if best < 0 || h > held[best]*(1+1e-9) {
				best = i
			}
		}
	}
	if best < 0 {
		best = t.nearestPanel(r.Centre)
	}
	if len(area) >= 3 {
		r.Area = value(area.Area())
	}
	if best < 0 {
		return
	}
	t.placeIn(&t.panels[best], area)
}

// placeIn fills where the finding is within its panel.
func (t *traced) placeIn(p *Panel, area Ring) {
	r := t.rel
	t.panel, r.Panel = p, p.ID
	r.PanelLength, r.PanelWidth, r.PanelAspect = value(p.Length), value(p.Width), value(p.Aspect)
	r.FromCentre = value(r.Centre.To(p.Centroid))
	u := p.Rectangle.along(p.LongDirection)
	r.Along = value(shareOf(u(r.Centre, 0), p.Length))
	r.Across = value(shareOf(u(r.Centre, 90), p.Width))
	if len(area) >= 3 {
		covered := OverlapArea(area, p.Ring)
		for _, h := range p.Openings {
			covered -= OverlapArea(area, h)
		}
		r.AreaShare = value(math.Max(0, covered/p.Area))
	}
	if len(p.SharpCorners) > 0 {
		near := math.Inf(1)
		for _, s := range t.points {
			_, d := nearestCorner(p.SharpCorners, s.at)
			near = math.Min(near, d)
		}
		r.SharpAt = value(near)
	}
}

// along returns a function that measures how far a point is along the rectangle
// in the given direction (turned by the second argument), from its first side.
func (r Ring) along(direction float64) func(Point, float64) float64 {
	return func(p Point, turned float64) float64 {
		d := Direction(direction + turned)
		low := math.Inf(1)
		for _, q := range r {
			low = math.Min(low, q.Dot(d))
		}
		return p.Dot(d) - low
	}
}

func shareOf(at, whole float64) float64 { return math.Max(0, math.Min(1, at/whole)) }

// holds reports whether p lies in the panel's concrete.
func (p Panel) holds(q Point) bool {
	if !p.Ring.Contains(q) {
		return false
	}
	for _, h := range p.Openings {
		if h.Contains(q) && h.Distance(q) > SnapTolerance {
			return false
		}
	}
	return true
}

func (t *traced) nearestPanel(p Point) int {
	best, at := EndReach, -1
	for i := range t.panels {
		if d := t.panels[i].Ring.Distance(p); d < best {
			best, at = d, i
		}
	}
	return at
}
