package report

import (
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
