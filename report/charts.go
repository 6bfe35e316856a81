package report

import (
	"fmt"
	"math"
	"strings"
	"time"

	"slabwright/internal/draw"
)

// chartHours is how long after placing began the pour day is drawn for, unless
// cutting went on longer.
const chartHours = 36.0

// day is the stretch of hours a pour is drawn over.
type day struct {
	clk      clock
	from     time.Time
	hours    float64
	labels   []draw.Label
	axisName string
}

// dayOf returns the hours to draw: from the full hour before placing to chartHours
// on, or past the last cut, but not past what was worked out.
func dayOf(c *Content, p *PourDay) day {
	d := day{clk: clockOf(c.Head)}
	d.from = p.Start.Truncate(time.Hour)
	end := d.from.Add(time.Duration(chartHours * float64(time.Hour)))
	later := func(t time.Time) {
		if t.Add(2 * time.Hour).After(end) {
			end = t.Add(2 * time.Hour)
		}
	}
	for _, cut := range p.Cuts {
		later(cut.At)
	}
	if p.Window.Closes != nil {
		later(*p.Window.Closes)
	}
	d.hours = math.Min(math.Ceil(end.Sub(d.from).Hours()), 96)
	every := 3
	if d.hours > 40 {
		every = 6
	}
	for h := 0; h <= int(d.hours); h++ {
		t := d.from.Add(time.Duration(h) * time.Hour).In(d.clk.zone)
		l := draw.Label{At: float64(h), Minor: t.Hour()%every != 0}
		if !l.Minor {
			l.Words = t.Format("15")
			if t.Hour() == 0 {
				l.Words = t.Format("Mon 2 Jan")
			}
		}
		d.labels = append(d.labels, l)
	}
	d.axisName = "hour of the day, " + d.clk.name
	return d
}

// at is a time as hours along the axis.
func (d day) at(t time.Time) float64 { return t.Sub(d.from).Hours() }

// axis is the hours as an axis.
func (d day) axis() draw.Axis {
	return draw.Axis{Title: d.axisName, Min: 0, Max: d.hours, Labels: d.labels}
}

// upTo returns an axis from low to the round value above high.
func upTo(title string, low, high float64, want int) draw.Axis {
	if !(high > low) {
		high = low + 1
	}
	values, step := draw.Steps(low, high, want)
	if last := values[len(values)-1]; last < high-1e-9*step {
		values = append(values, last+step)
	}
	if values[0] > low+1e-9*step {
		values = append([]float64{values[0] - step}, values...)
	}
	decimals := 0
	if step < 1 {
		decimals = int(math.Ceil(-math.Log10(step) - 1e-9))
	}
	a := draw.Axis{Title: title, Min: values[0], Max: values[len(values)-1]}
	for _, v := range values {
		a.Labels = append(a.Labels, draw.Label{At: v, Words: fixed(v, decimals)})
	}
	return a
}

// spans are the cut windows on the axis.
func (d day) spans(p *PourDay) []draw.Span {
	var spans []draw.Span
	for _, w := range []*Window{&p.Window, p.Early} {
		if w == nil || w.Opens == nil {
			continue
		}
		span := draw.Span{From: d.at(*w.Opens), To: d.hours, Words: w.Saw + " cut window", Fill: washBlue, OpenRight: true}
		if w.Closes != nil {
			span.To, span.OpenRight = d.at(*w.Closes), false
		}
		spans = append(spans, span)
	}
	return spans
}

// RulerChart is the pour day as one ruler with what happened on it.
func RulerChart(c *Content, p *PourDay) *draw.Scene {
	d := dayOf(c, p)
	r := draw.Ruler{Width: 172, Title: "Hours of " + p.Name, From: 0, To: d.hours, Labels: d.labels,
		Ink: ink, Quiet: quiet, Paper: paper}
	if spans := d.spans(p); len(spans) > 0 {
		r.Spans = spans[:1]
	}
	for _, e := range p.Events {
		pen := draw.Pen{Color: quiet, Width: 0.15}
		switch e.Kind {
		case "cut":
			pen = draw.Pen{Color: chalk, Width: 0.3}
		case "departure":
			pen = draw.Pen{Color: vermilion, Width: 0.3}
		case "window":
			continue // the span says it
		}
		r.Marks = append(r.Marks, draw.Mark{At: d.at(e.At), Words: d.clk.time(e.At) + " " + cut(e.What, 32), Pen: pen})
	}
	r.Desc = fmt.Sprintf("%d events from %s on.", len(r.Marks), d.clk.hour(p.Start))
	return r.Scene()
}

// DryingChart is the drying rate by the three published forms, nil where none was
// worked out.
func DryingChart(c *Content, p *PourDay) *draw.Scene {
	if len(p.Drying) < 2 {
		return nil
	}
	d := dayOf(c, p)
	forms := []struct {
		name string
		pen  draw.Pen
		rate func(DryingHour) float64
	}{
		{"Uno 1998", draw.Pen{Color: ink, Width: 0.5}, func(h DryingHour) float64 { return h.Uno }},
		{"Uno, US units", draw.Pen{Color: chalk, Width: 0.3, Dash: []float64{2, 0.8}}, func(h DryingHour) float64 { return h.UnoUS }},
		{"Menzel", draw.Pen{Color: green, Width: 0.3, Dash: []float64{0.6, 0.8}}, func(h DryingHour) float64 { return h.Menzel }},
	}
	// the sheet is about fresh concrete: the hours round set
	last := math.Min(d.hours, 18)
	ch := draw.Chart{Width: 172, Height: 56, Title: "Drying rate, " + p.Name, X: d.axis(), Ink: ink, Quiet: quiet, Paper: paper, NameSpace: 36}
	ch.X.Max = last
	ch.X.Labels = upToHour(d.labels, last)
	top := 1.1
	for _, f := range forms {
		curve := draw.Curve{Name: f.name, Pen: f.pen}
		for _, h := range p.Drying {
			if at := d.at(h.Time); at >= 0 && at <= last {
				curve.X, curve.Y = append(curve.X, at), append(curve.Y, f.rate(h))
				top = math.Max(top, f.rate(h))
			}
		}
		ch.Curves = append(ch.Curves, curve)
	}
	ch.Y = upTo("drying rate, kg/m² per hour", 0, top, 4)
	ch.Limits = []draw.Limit{{At: 1, Name: "1.0, ACI 305R"}}
	ch.Marks = d.marks(p, last, map[string]bool{"set": true, "finish": true, "cure": true})
	if p.FilmGone != nil && !marked(ch.Marks, d.at(*p.FilmGone)) {
		ch.Marks = append(ch.Marks, draw.Mark{At: d.at(*p.FilmGone), Words: d.clk.time(*p.FilmGone) + " bleed water gone", Pen: draw.Pen{Color: vermilion, Width: 0.25}})
	}
	ch.Desc = chartDesc(ch, "kg/m²h")
	return ch.Scene()
}

// marks are the events of some kinds on a chart.
func (d day) marks(p *PourDay, last float64, kinds map[string]bool) []draw.Mark {
	var marks []draw.Mark
	for _, e := range p.Events {
		if at := d.at(e.At); kinds[e.Kind] && at >= 0 && at <= last {
			pen := draw.Pen{Color: quiet, Width: 0.2}
			if e.Kind == "cut" {
				pen = draw.Pen{Color: chalk, Width: 0.25, Dash: []float64{0.8, 0.5}}
			}
			marks = append(marks, draw.Mark{At: at, Words: d.clk.time(e.At) + " " + cut(e.What, 28), Pen: pen})
		}
	}
	return marks
}

// marked reports whether something stands within a minute of a place already.
func marked(marks []draw.Mark, at float64) bool {
	for _, m := range marks {
		if math.Abs(m.At-at) < 1.0/60 {
			return true
		}
	}
	return false
}

// cut shortens words to so many letters, at a space.
func cut(s string, most int) string {
	letters := []rune(strings.TrimSuffix(s, "."))
	if len(letters) <= most {
		return string(letters)
	}
	short := string(letters[:most])
	if i := strings.LastIndexByte(short, ' '); i > most/2 {
		short = short[:i]
	}
	return strings.TrimRight(short, " ,;:") + "…"
}

func upToHour(labels []draw.Label, last float64) []draw.Label {
	var kept []draw.Label
	for _, l := range labels {
		if l.At <= last {
			kept = append(kept, l)
		}
	}
	return kept
}

// TemperatureChart is the slab through its depth with the air above it.
func TemperatureChart(c *Content, p *PourDay) *draw.Scene {
	if len(p.Column) < 2 {
		return nil
	}
	d := dayOf(c, p)
	curves := []struct {
		name string
		pen  draw.Pen
		of   func(ColumnHour) float64
	}{
		{"top", draw.Pen{Color: vermilion, Width: 0.5}, func(h ColumnHour) float64 { return h.Top }},
		{"middle", draw.Pen{Color: ink, Width: 0.35, Dash: []float64{3, 0.9}}, func(h ColumnHour) float64 { return h.Middle }},
		{"bottom", draw.Pen{Color: chalk, Width: 0.35, Dash: []float64{1, 0.8}}, func(h ColumnHour) float64 { return h.Bottom }},
	}
	ch := draw.Chart{Width: 172, Height: 56, Title: "Temperature through the depth, " + p.Name, X: d.axis(), Ink: ink, Quiet: quiet, Paper: paper, NameSpace: 26}
	low, high := math.Inf(1), math.Inf(-1)
	put := func(curve *draw.Curve, t time.Time, v float64) {
		if at := d.at(t); at >= 0 && at <= d.hours {
			curve.X, curve.Y = append(curve.X, at), append(curve.Y, v)
			low, high = math.Min(low, v), math.Max(high, v)
		}
	}
	for _, f := range curves {
		curve := draw.Curve{Name: f.name, Pen: f.pen}
		for _, h := range p.Column {
			put(&curve, h.Time, f.of(h))
		}
		ch.Curves = append(ch.Curves, curve)
	}
	air := draw.Curve{Name: "air", Pen: draw.Pen{Color: quiet, Width: 0.25, Dash: []float64{0.3, 0.7}}}
	for _, h := range p.Drying {
		put(&air, h.Time, h.Air)
	}
	if len(air.X) > 1 {
		ch.Curves = append(ch.Curves, air)
	}
	if low > high {
		return nil // nothing falls on these hours
	}
	ch.Y = upTo("temperature, °C", low, high, 4)
	ch.Marks = d.marks(p, d.hours, map[string]bool{"set": true})
	ch.Desc = chartDesc(ch, "°C")
	return ch.Scene()
}

// ShareChart is the share of tensile strength used in the slab before cutting,
// median and range, against 1.
func ShareChart(c *Content, p *PourDay) *draw.Scene {
	if len(p.Column) < 2 {
		return nil
	}
	d := dayOf(c, p)
	curve := draw.Curve{Name: "slab not cut", Pen: draw.Pen{Color: ink, Width: 0.5}, Band: washWarm}
	top := 1.1
	for _, h := range p.Column {
		at := d.at(h.Time)
		if at < 0 || at > d.hours {
			continue
		}
		curve.X, curve.Y = append(curve.X, at), append(curve.Y, h.Share)
		curve.Low, curve.High = append(curve.Low, h.ShareLow), append(curve.High, h.ShareHigh)
		top = math.Max(top, math.Min(h.ShareHigh, 2))
	}
	ch := draw.Chart{Width: 172, Height: 62, Title: "Share of tensile strength used, " + p.Name, X: d.axis(), Ink: ink, Quiet: quiet, Paper: paper, NameSpace: 30}
	ch.Y = upTo("tension over tensile strength", 0, top, 4)
	ch.Curves = []draw.Curve{curve}
	ch.Limits = []draw.Limit{{At: 1, Name: "cracks at 1"}}
	ch.Spans = d.spans(p)
	if len(ch.Spans) > 1 {
		ch.Spans = ch.Spans[:1]
	}
	ch.Marks = d.marks(p, d.hours, map[string]bool{"cut": true})
	ch.Desc = chartDesc(ch, "of the tensile strength")
	return ch.Scene()
}

// chartDesc says the highest value of each curve and its hour.
func chartDesc(ch draw.Chart, unit string) string {
	s := ""
	for _, curve := range ch.Curves {
		best := -1
		for i, y := range curve.Y {
			if best < 0 || y > curve.Y[best] {
				best = i
			}
		}
		if best >= 0 {
			s += fmt.Sprintf("%s: highest %s %s, %s hours on. ", curve.Name, fixed(curve.Y[best], 2), unit, fixed(curve.X[best], 0))
		}
	}
	return s
}
