package draw

import "math"

// Box is a place on paper, mm.
type Box struct{ X0, Y0, X1, Y1 float64 }

func (b Box) over(o Box) bool { return b.X0 < o.X1 && o.X0 < b.X1 && b.Y0 < o.Y1 && o.Y0 < b.Y1 }

// Around is the box round points.
func Around(pts []Point) Box {
	b := Box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, q := range pts {
		b.X0, b.Y0 = math.Min(b.X0, q.X), math.Min(b.Y0, q.Y)
		b.X1, b.Y1 = math.Max(b.X1, q.X), math.Max(b.Y1, q.Y)
	}
	return b
}

// crowded is the number of boxes past which looking for free room is given up.
const crowded = 20000

// Labels keeps words from running into each other and off the sheet. First come
// stays; later ones step aside.
type Labels struct {
	Only func(Box) bool // where labels may stand now; nil: anywhere in the field

	taken []Box // by words, cracks and edges: never to be covered
	lines []Box // better left clear: covered only when there is no other place
	field Box
}

// NewLabels returns an empty field of so many mm.
func NewLabels(width, height float64) *Labels { return &Labels{field: Box{X1: width, Y1: height}} }

// Free finds the offset nearest to the wanted one at which a label of this size,
// centred on at plus the offset, stands clear, over lines if it must; where nothing
// is clear it returns the wanted one and false.
func (l *Labels) Free(at Point, w, h float64, wanted Point, reach float64) (Point, bool) {
	if len(l.taken)+len(l.lines) > crowded {
		return wanted, false
	}
	if off, ok := l.Search(at, w, h, wanted, reach, true); ok {
		return off, true
	}
	return l.Search(at, w, h, wanted, reach, false)
}

// Search is [Labels.Free] with or without keeping off lines.
func (l *Labels) Search(at Point, w, h float64, wanted Point, reach float64, strict bool) (Point, bool) {
	try := func(off Point) (Point, bool) {
		b := Box{at.X + off.X - w/2, at.Y + off.Y - h/2, at.X + off.X + w/2, at.Y + off.Y + h/2}
		if !l.clear(b, strict) {
			return off, false
		}
		l.taken = append(l.taken, b)
		return off, true
	}
	if off, ok := try(wanted); ok {
		return off, true
	}
	for r := 1.5; r <= reach; r += 1.5 {
		for k := range 12 {
			sin, cos := math.Sincos(float64(k) * math.Pi / 6)
			if off, ok := try(Point{wanted.X + r*cos, wanted.Y + r*sin}); ok {
				return off, true
			}
		}
	}
	return wanted, false
}

func (l *Labels) clear(b Box, strict bool) bool {
	if b.X0 < l.field.X0 || b.Y0 < l.field.Y0 || b.X1 > l.field.X1 || b.Y1 > l.field.Y1 {
		return false
	}
	if l.Only != nil && !l.Only(b) {
		return false
	}
	for _, t := range l.taken {
		if b.over(t) {
			return false
		}
	}
	for _, t := range l.lines {
		if strict && b.over(t) {
			return false
		}
	}
	return true
}

// Take marks a straight piece as taken.
func (l *Labels) Take(a, b Point, half float64) { l.taken = boxes(l.taken, a, b, half) }

// TakeBox marks a box as taken.
func (l *Labels) TakeBox(b Box) { l.taken = append(l.taken, b) }

// Line marks a straight piece as better left clear.
func (l *Labels) Line(a, b Point, half float64) { l.lines = boxes(l.lines, a, b, half) }

// Area marks the box round a ring as better left clear.
func (l *Labels) Area(ring []Point) {
	if len(ring) > 2 {
		l.lines = append(l.lines, Around(ring))
	}
}

// boxes adds small boxes along a straight piece.
func boxes(all []Box, a, b Point, half float64) []Box {
	n := int(math.Hypot(b.X-a.X, b.Y-a.Y)/(2*half)) + 1
	for i := 0; i <= n; i++ {
		s := float64(i) / float64(n)
		x, y := a.X+s*(b.X-a.X), a.Y+s*(b.Y-a.Y)
		all = append(all, Box{x - half, y - half, x + half, y + half})
	}
	return all
}

// Beside writes words along a path where they stand clear, else over lines, else at
// its middle whatever is there; away is how far off the path, mm. The text gives
// words, height and colours.
func (l *Labels) Beside(path []Point, t Text, away float64) Text {
	for _, strict := range []bool{true, false} {
		for _, share := range []float64{0.5, 0.3, 0.7, 0.15, 0.85, 0.4, 0.6, 0.22, 0.78} {
			for _, side := range []float64{1, -1} {
				if placed, ok := l.besideAt(StationAt(path, share), t, side*away, strict); ok {
					return placed
				}
			}
		}
	}
	placed, _ := l.besideAt(StationAt(path, 0.5), t, away, false)
	return placed
}

// besideAt turns the words along the path at a place, upright to read, and says
// whether they stand clear there.
func (l *Labels) besideAt(s Station, t Text, away float64, strict bool) (Text, bool) {
	w := WidthOf(t.Words, t.Height) + 0.6
	angle := math.Atan2(-s.UY, s.UX) * 180 / math.Pi
	if angle > 91 {
		angle -= 180
	} else if angle < -89 {
		angle += 180
	}
	sin, cos := math.Sincos(angle * math.Pi / 180)
	bw, bh := w*math.Abs(cos)+t.Height*math.Abs(sin), w*math.Abs(sin)+t.Height*math.Abs(cos)
	up := Point{-away * sin, -away * cos}
	_, ok := l.Search(s.At, bw, bh, up, 0, strict)
	t.At, t.Angle, t.Anchor = s.At, angle, Middle
	t.Lift = Point{up.X + t.Height*0.3*sin, up.Y + t.Height*0.3*cos}
	return t, ok
}
