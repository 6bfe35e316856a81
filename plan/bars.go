package plan

import "math"

// Bar is the centre-line of one bar in plan.
type Bar struct {
	From  Point  `json:"from"`
	To    Point  `json:"to"`
	Zone  string `json:"zone"`  // or the joint of a dowel
	Along string `json:"along"` // "x" or "y" of the zone, "dowel"
}

// Segment returns the bar as a straight piece.
func (b Bar) Segment() Segment { return Segment{b.From, b.To} }

// BarLines returns the centre-lines of the zone's bars, cut to its area, the
// outline and the openings. Without a point where two bars cross (First) nobody
// knows where the bars are, and there are none to return; pitch alone still tells
// how far apart they lie.
func (s Slab) BarLines(z BarZone) []Bar {
	if z.First == nil {
		return nil
	}
	area := Ring(z.Area)
	if len(area) < 3 {
		area = s.Outline
	}
	u := Direction(z.Angle)
	var bars []Bar
	if z.PitchX != nil {
		bars = append(bars, s.parallelBars(z, area, u, u.Left(), z.PitchX.Value, "x")...)
	}
	if z.PitchY != nil {
		bars = append(bars, s.parallelBars(z, area, u.Left(), u.Times(-1), z.PitchY.Value, "y")...)
	}
	return bars
}

// mostBars bounds how many lines one zone may have, so that a pitch typed in the
// wrong unit cannot fill the memory.
const mostBars = 20000

func (s Slab) parallelBars(z BarZone, area Ring, along, across Point, pitch float64, name string) []Bar {
	if !(pitch > 0) || len(area) < 3 {
		return nil
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range area {
		off := p.Minus(*z.First).Dot(across)
		low, high = math.Min(low, off), math.Max(high, off)
	}
	from, to := math.Ceil(low/pitch-1e-9), math.Floor(high/pitch+1e-9)
	if to-from > mostBars {
		return nil
	}
	var bars []Bar
	for n := from; n <= to; n++ {
		p := z.First.Plus(across.Times(n * pitch))
		in := both(cut(p, along, area), cut(p, along, s.Outline))
		for _, f := range s.openings() {
			in = less(in, cut(p, along, f.Shape))
		}
		for _, t := range in {
			bars = append(bars, Bar{p.Plus(along.Times(t.from)), p.Plus(along.Times(t.to)), z.ID, name})
		}
	}
	return bars
}

// DowelBars returns the dowels of a joint as short pieces across it. The joint is
// parted where other joints meet it; in each stretch the bars are centred, the
// first and last no nearer to the end than Clear (half a spacing where nobody
// noted it, but then crossings are not kept clear: bars set out without thought of
// them are taken as running through). Without spacing and length there are none.
func (s Slab) DowelBars(j Joint) []Bar {
	if j.Dowels == nil || j.Dowels.Spacing == nil || j.Dowels.Length == nil {
		return nil
	}
	spacing, half := j.Dowels.Spacing.Value, j.Dowels.Length.Value/2
	path := Polyline(j.Path)
	whole := path.Length()
	if !(spacing > 0) || !(half > 0) || whole == 0 {
		return nil
	}
	clear, stops := spacing/2, []float64{0, whole}
	if j.Dowels.Clear != nil {
		clear = j.Dowels.Clear.Value
		stops = s.meetings(j)
	}
	var bars []Bar
	for i := 1; i < len(stops); i++ {
		room := stops[i] - stops[i-1] - 2*clear
		if room < 0 || room/spacing > mostBars {
			continue
		}
		n := math.Floor(room/spacing + 1e-9)
		start := stops[i-1] + clear + (room-n*spacing)/2
		for k := 0.0; k <= n; k++ {
			p, d := path.At(start + k*spacing)
			across := d.Left().Times(half)
			bars = append(bars, Bar{p.Minus(across), p.Plus(across), j.ID, "dowel"})
		}
	}
	return bars
}

// meetings returns the places along a joint where its ends are and where other
// joints meet it, in order.
func (s Slab) meetings(j Joint) []float64 {
	path := Polyline(j.Path)
	at := []float64{0, path.Length()}
	for _, x := range s.Crossings() {
		if x.Joints[0] == j.ID || x.Joints[1] == j.ID {
			along, _, _ := path.Nearest(x.At)
			at = append(at, along)
		}
	}
	return distinct(at, SnapTolerance)
}
