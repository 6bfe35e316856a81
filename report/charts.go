package report

import (
	"fmt"
	"math"
	"strings"
	"time"

	"slabwright/internal/draw"
)

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
	ch := draw.Chart{Width: 172, Title: "Drying rate, " + p.Name, X: d.axis(), Ink: ink, Quiet: quiet, Paper: paper, NameSpace: 36}
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
	ch.Limits = []draw.Limit{{At: 1, Name: "1.0, ACI 305R"}}
	if planned := p.DryingLimit; planned != nil {
		if *planned == 1 {
			ch.Limits = []draw.Limit{{At: 1, Name: "1.0, planned and ACI 305R"}}
		} else {
			ch.Limits = append(ch.Limits, draw.Limit{At: *planned, Name: strings.TrimSuffix(fixed(*planned, 2), "0") + ", as planned"})
			top = math.Max(top, *planned)
		}
	}
	ch.Y = upTo("drying rate, kg/m² per hour", 0, top, 4)
	ch.Marks = d.marks(p, last, map[string]bool{"set": true, "finish": true, "cure": true})
	if p.FilmGone != nil && !marked(ch.Marks, d.at(*p.FilmGone)) {
		ch.Marks = append(ch.Marks, draw.Mark{At: d.at(*p.FilmGone), Words: d.clk.time(*p.FilmGone) + " bleed water gone", Pen: draw.Pen{Color: vermilion, Width: 0.25}})
	}
	ch.Desc = chartDesc(ch, "kg/m²h")
	return ch.WithField(27).Scene()
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
	ch := draw.Chart{Width: 172, Title: "Temperature through the depth, " + p.Name, X: d.axis(), Ink: ink, Quiet: quiet, Paper: paper, NameSpace: 26}
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
	return ch.WithField(27).Scene()
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
	ch := draw.Chart{Width: 172, Title: "Share of tensile strength used, " + p.Name, X: d.axis(), Ink: ink, Quiet: quiet, Paper: paper, NameSpace: 30}
	ch.Y = upTo("tension over tensile strength", 0, top, 4)
	ch.Curves = []draw.Curve{curve}
	ch.Limits = []draw.Limit{{At: 1, Name: "cracks at 1"}}
	ch.Spans = d.spans(p)
	if len(ch.Spans) > 1 {
		ch.Spans = ch.Spans[:1]
	}
	ch.Marks = d.marks(p, d.hours, map[string]bool{"cut": true})
	ch.Desc = chartDesc(ch, "of the tensile strength")
	return ch.WithField(32).Scene()
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
