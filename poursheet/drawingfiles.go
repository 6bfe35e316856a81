package poursheet

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"slabwright/internal/dxf"
	"slabwright/plan"
)

// Layers of a joint drawing as DXF.
const (
	LayerEdge      = "SLAB-EDGE"
	LayerOpenings  = "OPENINGS"
	LayerFixtures  = "FIXTURES"
	LayerSawn      = "JOINT-SAWN"
	LayerFormed    = "JOINT-FORMED"
	LayerIsolation = "JOINT-ISOLATION"
	LayerDowels    = "DOWELS"
	LayerSteel     = "STEEL"
	LayerPanels    = "PANELS"
	LayerNames     = "JOINT-NAMES"
	LayerRunning   = "DIMENSIONS"
	LayerTitle     = "TITLE"
)

// dash is the long dash of a sawn joint on the ground at 1:100, m; formed and
// isolation joints have dashes of their own, so that layers read in black and white.
var (
	dash    = dxf.Stroke{Name: "LONGDASH", Shows: "____  ____  ____", Lengths: []float64{0.5, -0.13}}
	dashDot = dxf.Stroke{Name: "DASHDOT", Shows: "____ . ____ .", Lengths: []float64{0.5, -0.1, 0, -0.1}}
)

// jointLayer returns the layer of a kind of joint.
func jointLayer(k plan.JointKind) string {
	switch k {
	case plan.Formed:
		return LayerFormed
	case plan.Isolation:
		return LayerIsolation
	}
	return LayerSawn
}

// DXF returns the drawing as a file of release 12 in the drawing's units, at true
// size in the axes of the job, each kind on a layer of its own.
func (d Drawing) DXF() ([]byte, error) {
	if err := d.Check(); err != nil {
		return nil, err
	}
	unit := dxf.Millimetre
	if d.Units == Metres {
		unit = dxf.Metre
	}
	w := dxf.New(unit)
	for _, l := range []struct {
		name   string
		colour dxf.Colour
		stroke dxf.Stroke
	}{{LayerEdge, dxf.White, dxf.Full}, {LayerOpenings, dxf.White, dxf.Full}, {LayerFixtures, dxf.Grey, dxf.Full}, {LayerSawn, dxf.Blue, dash},
		{LayerFormed, dxf.Blue, dxf.Full}, {LayerIsolation, dxf.Magenta, dashDot}, {LayerDowels, dxf.Green, dxf.Full}, {LayerSteel, dxf.Grey, dxf.Full},
		{LayerPanels, dxf.White, dxf.Full}, {LayerNames, dxf.Blue, dxf.Full}, {LayerRunning, dxf.Grey, dxf.Full}, {LayerTitle, dxf.White, dxf.Full}} {
		w.Layer(l.name, l.colour, l.stroke)
	}
	d.shapesTo(w)
	d.wordsTo(w)
	d.runningTo(w)
	return w.Bytes(), nil
}

func places(points []plan.Point) []dxf.Point {
	out := make([]dxf.Point, len(points))
	for i, p := range points {
		out[i] = dxf.Point(p)
	}
	return out
}

func (d Drawing) shapesTo(w *dxf.Writer) {
	w.Polyline(LayerEdge, places(d.Slab.Outline), true)
	for _, f := range d.Slab.Fixtures {
		layer := LayerFixtures
		if f.Opening {
			layer = LayerOpenings
		}
		w.Polyline(layer, places(f.Shape), len(f.Shape) > 2 && f.Kind != plan.Wall && f.Kind != plan.Building)
	}
	for _, j := range d.Slab.Joints {
		w.Polyline(jointLayer(j.Kind), places(j.Path), false)
		for _, b := range d.dowels(j) {
			w.Line(LayerDowels, dxf.Point(b.From), dxf.Point(b.To))
		}
	}
	for _, c := range d.Slab.CornerBars {
		for _, l := range c.Lines() {
			w.Line(LayerSteel, dxf.Point(l.A), dxf.Point(l.B))
		}
	}
	for _, z := range d.Slab.Steel {
		for _, b := range d.Slab.BarLines(z) {
			w.Line(LayerSteel, dxf.Point(b.From), dxf.Point(b.To))
		}
	}
}

// letters is the height of words on the ground, m: 2.5 mm at 1:100.
const letters = 0.25

func (d Drawing) wordsTo(w *dxf.Writer) {
	for _, p := range d.Panels {
		w.Text(LayerPanels, dxf.Point(p.Centroid), letters*1.4, 0, dxf.AtMiddle, p.ID)
	}
	for _, j := range d.Slab.Joints {
		at, along := plan.Polyline(j.Path).At(plan.Polyline(j.Path).Length() / 2)
		w.Text(LayerNames, dxf.Point(at.Plus(along.Left().Times(letters/2))), letters, degrees(along), dxf.AtMiddle, j.ID)
	}
	for _, f := range d.Slab.Fixtures {
		if len(f.Shape) > 0 {
			low, high := plan.Ring(f.Shape).Box()
			w.Text(LayerFixtures, dxf.Point(low.Plus(high).Times(0.5)), letters, 0, dxf.AtMiddle, or(f.Name, f.ID))
		}
	}
	low, _ := plan.Ring(d.Slab.Outline).Box()
	t := d.Title
	for i, words := range []string{"Joint drawing: " + or(d.Slab.Name, d.Slab.ID), joined(", ", t.Number, t.Job, t.Client), "Rev " + t.revision() + ", lengths in " + d.Units.String() + " from the setting-out point"} {
		w.Text(LayerTitle, dxf.Point{X: low.X, Y: low.Y - 3.5 - 0.6*float64(i)}, letters*1.2, 0, dxf.AtLeft, words)
	}
}

// runningTo writes the running dimensions as lines and words.
func (d Drawing) runningTo(w *dxf.Writer) {
	low, high := plan.Ring(d.Slab.Outline).Box()
	o := d.origin()
	w.Circle(LayerRunning, dxf.Point(o), 0.15)
	put := func(a axis, marks []running, base, out float64) {
		for _, m := range marks {
			p, q := dxf.Point{X: m.at, Y: base}, dxf.Point{X: m.at, Y: base + out}
			turn := 90.0
			if a == alongY {
				p, q, turn = dxf.Point{X: base, Y: m.at}, dxf.Point{X: base + out, Y: m.at}, 0
			}
			w.Line(LayerRunning, p, q)
			align := dxf.AtLeft
			if out < 0 {
				align = dxf.AtRight
			}
			w.Text(LayerRunning, q, letters, turn, align, d.Units.length(m.at-a.of(o)))
		}
	}
	const off, tick = 0.4, 0.3
	put(alongX, d.jointMarks(alongX), low.Y-off, -tick)
	put(alongX, d.edgeMarks(alongX), high.Y+off, tick)
	put(alongY, d.jointMarks(alongY), low.X-off, -tick)
	put(alongY, d.edgeMarks(alongY), high.X+off, tick)
}

// degrees returns the direction of words along a line, to be read from below or from
// the right.
func degrees(along plan.Point) float64 {
	d := plan.Point{X: along.X, Y: along.Y}
	if d.X < -1e-9 || d.X < 1e-9 && d.Y < 0 {
		d = d.Times(-1)
	}
	return angleOf(d)
}

// CSV returns the setting-out table: one row for each straight piece of a joint,
// from the setting-out point, lengths in the drawing's units. RFC 4180, UTF-8.
func (d Drawing) CSV() ([]byte, error) {
	if err := d.Check(); err != nil {
		return nil, err
	}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	u := d.Units.String()
	write := func(cells ...string) {
		for i, c := range cells {
			cells[i] = guarded(c)
		}
		w.Write(cells) // a buffer does not refuse
	}
	write("joint", "name", "kind", "piece", "from x "+u, "from y "+u, "to x "+u, "to y "+u, "length "+u, "saw depth mm", "across it", "dowels")
	for _, j := range d.Schedule().Joints {
		for i := 1; i < len(j.Points); i++ {
			a, b := j.Points[i-1], j.Points[i]
			depth := ""
			if j.Kind == plan.Sawn && d.SawDepth != nil {
				depth = plainNumber(*d.SawDepth*1000, 0)
			}
			write(j.ID, j.Name, string(j.Kind), strconv.Itoa(i), d.number(a.X), d.number(a.Y), d.number(b.X), d.number(b.Y), d.number(a.To(b)), depth, j.Transfer, strconv.Itoa(j.Dowels))
		}
	}
	w.Flush()
	if err := w.Error(); err != nil {
		return nil, fmt.Errorf("setting-out table: %w", err)
	}
	return out.Bytes(), nil
}

// number writes a length for a machine: a plain minus, no thin spaces.
func (d Drawing) number(metres float64) string {
	if d.Units == Metres {
		return plainNumber(metres, 3)
	}
	return plainNumber(metres*1000, 0)
}

func plainNumber(v float64, decimals int) string {
	return strings.Replace(fixed(v, decimals), "−", "-", 1)
}

// guarded keeps a spreadsheet from running a cell as a formula; a real negative
// number stays.
func guarded(cell string) string {
	if cell == "" || !strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
		return cell
	}
	if _, err := strconv.ParseFloat(cell, 64); err == nil {
		return cell
	}
	return "'" + cell
}
