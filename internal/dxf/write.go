package dxf

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Colour is a colour by its number in the list every reader has. White is black on
// white paper.
type Colour int

// Colours.
const (
	Red     Colour = 1
	Yellow  Colour = 2
	Green   Colour = 3
	Cyan    Colour = 4
	Blue    Colour = 5
	Magenta Colour = 6
	White   Colour = 7
	Grey    Colour = 8
)

// Stroke is a kind of line: a name and lengths of strokes (above zero), gaps (below)
// and dots (zero), metres on the ground. No lengths: a full line.
type Stroke struct {
	Name    string
	Shows   string // in ASCII: "____ ____"
	Lengths []float64
}

// Full is an unbroken line.
var Full = Stroke{Name: "CONTINUOUS", Shows: "Solid line"}

// Writer builds a drawing in release 12 (AC1009), ASCII. Coordinates are given in
// metres and written in its unit.
type Writer struct {
	unit      Unit
	perMetre  float64
	layers    []writtenLayer
	strokes   []Stroke
	body      bytes.Buffer
	low, high Point
	any       bool
}

type writtenLayer struct {
	name   string
	colour Colour
	stroke string
}

// New starts a drawing in millimetres or metres (or any other unit of known length).
func New(unit Unit) *Writer {
	metres, known := unit.Metres()
	if !known {
		panic("dxf: a drawing must be written in a unit of known length")
	}
	return &Writer{unit: unit, perMetre: 1 / metres, strokes: []Stroke{Full},
		low: Point{math.Inf(1), math.Inf(1)}, high: Point{math.Inf(-1), math.Inf(-1)}}
}

// Layer adds a layer. Release 12 allows 31 letters A-Z, figures, $, - and _ in its
// name; another name is a mistake of the caller.
func (w *Writer) Layer(name string, colour Colour, stroke Stroke) {
	if !soundName(name) || !soundName(stroke.Name) {
		panic("dxf: a layer or stroke name must be A-Z, 0-9, $, - or _, 31 letters at most: " + name + ", " + stroke.Name)
	}
	w.layers = append(w.layers, writtenLayer{name, colour, stroke.Name})
	for _, s := range w.strokes {
		if s.Name == stroke.Name {
			return
		}
	}
	w.strokes = append(w.strokes, stroke)
}

func soundName(s string) bool {
	return s != "" && len(s) <= 31 && strings.Trim(s, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789$-_") == ""
}

// on checks that a layer is there.
func (w *Writer) on(layer string) {
	for _, l := range w.layers {
		if l.name == layer {
			return
		}
	}
	panic("dxf: nothing is known of layer " + layer + "; add it first")
}

func (w *Writer) groups(to *bytes.Buffer, pairs ...any) {
	for i := 0; i < len(pairs); i += 2 {
		fmt.Fprintf(to, "%3d\r\n%v\r\n", pairs[i], pairs[i+1])
	}
}

// real writes a number of metres in the unit of the drawing, to a thousandth of a
// millimetre or nine digits, whichever is finer.
func (w *Writer) real(metres float64) string {
	if math.IsNaN(metres) || math.IsInf(metres, 0) {
		panic("dxf: a coordinate that is no number")
	}
	s := strconv.FormatFloat(metres*w.perMetre, 'f', 9, 64)
	s = strings.TrimRight(s, "0")
	if strings.HasSuffix(s, ".") {
		s += "0"
	}
	if s == "-0.0" {
		return "0.0"
	}
	return s
}

func (w *Writer) grow(p Point) {
	w.low = Point{math.Min(w.low.X, p.X), math.Min(w.low.Y, p.Y)}
	w.high = Point{math.Max(w.high.X, p.X), math.Max(w.high.Y, p.Y)}
	w.any = true
}

// Line draws a straight piece.
func (w *Writer) Line(layer string, a, b Point) {
	w.on(layer)
	w.grow(a)
	w.grow(b)
	w.groups(&w.body, 0, "LINE", 8, layer, 10, w.real(a.X), 20, w.real(a.Y), 30, "0.0", 11, w.real(b.X), 21, w.real(b.Y), 31, "0.0")
}

// Polyline draws a run of straight pieces; closed joins its last point to its first.
func (w *Writer) Polyline(layer string, points []Point, closed bool) {
	w.Bulged(layer, points, nil, closed)
}

// Bulged draws a run of pieces of which some are arcs: bulges[i] belongs to the
// piece that leaves point i, the tangent of a quarter of its turn, above zero
// anticlockwise. Nil is all straight.
func (w *Writer) Bulged(layer string, points []Point, bulges []float64, closed bool) {
	w.on(layer)
	if len(points) < 2 {
		return
	}
	flag := 0
	if closed {
		flag = closedFlag
	}
	w.groups(&w.body, 0, "POLYLINE", 8, layer, 66, 1, 10, "0.0", 20, "0.0", 30, "0.0", 70, flag)
	for i, p := range points {
		w.grow(p)
		w.groups(&w.body, 0, "VERTEX", 8, layer, 10, w.real(p.X), 20, w.real(p.Y), 30, "0.0")
		if i < len(bulges) && bulges[i] != 0 {
			w.groups(&w.body, 42, strconv.FormatFloat(bulges[i], 'f', 12, 64))
		}
	}
	w.groups(&w.body, 0, "SEQEND", 8, layer)
}

// Circle draws a circle.
func (w *Writer) Circle(layer string, centre Point, radius float64) {
	w.on(layer)
	w.grow(Point{centre.X - radius, centre.Y - radius})
	w.grow(Point{centre.X + radius, centre.Y + radius})
	w.groups(&w.body, 0, "CIRCLE", 8, layer, 10, w.real(centre.X), 20, w.real(centre.Y), 30, "0.0", 40, w.real(radius))
}

// Align says which part of a text stands at its point.
type Align int

// Alignments along the line of the text.
const (
	AtLeft Align = iota
	AtMiddle
	AtRight
)

// Text writes one line of words, height in metres on the ground, turned by degrees
// anticlockwise. Letters beyond ASCII are written by their numbers.
func (w *Writer) Text(layer string, at Point, height, degrees float64, align Align, words string) {
	w.on(layer)
	w.grow(at)
	w.groups(&w.body, 0, "TEXT", 8, layer, 10, w.real(at.X), 20, w.real(at.Y), 30, "0.0", 40, w.real(height), 1, escaped(words),
		50, strconv.FormatFloat(degrees, 'f', 6, 64))
	if align != AtLeft {
		w.groups(&w.body, 72, int(align), 11, w.real(at.X), 21, w.real(at.Y), 31, "0.0")
	}
}

// Bytes returns the file. The same calls give the same bytes.
func (w *Writer) Bytes() []byte {
	var out bytes.Buffer
	w.header(&out)
	w.tables(&out)
	w.groups(&out, 0, "SECTION", 2, "BLOCKS", 0, "ENDSEC")
	w.groups(&out, 0, "SECTION", 2, "ENTITIES")
	out.Write(w.body.Bytes())
	w.groups(&out, 0, "ENDSEC", 0, "EOF")
	return out.Bytes()
}

func (w *Writer) header(out *bytes.Buffer) {
	low, high := w.low, w.high
	if !w.any {
		low, high = Point{}, Point{1, 1}
	}
	w.groups(out, 0, "SECTION", 2, "HEADER", 9, "$ACADVER", 1, "AC1009", 9, "$DWGCODEPAGE", 3, "ANSI_1252", 9, "$INSUNITS", 70, int(w.unit), 9, "$MEASUREMENT", 70, 1,
		9, "$INSBASE", 10, "0.0", 20, "0.0", 30, "0.0",
		9, "$EXTMIN", 10, w.real(low.X), 20, w.real(low.Y), 30, "0.0", 9, "$EXTMAX", 10, w.real(high.X), 20, w.real(high.Y), 30, "0.0",
		9, "$LTSCALE", 40, "1.0", 9, "$LUNITS", 70, 2, 9, "$LUPREC", 70, 3, 0, "ENDSEC")
}

func (w *Writer) tables(out *bytes.Buffer) {
	w.groups(out, 0, "SECTION", 2, "TABLES", 0, "TABLE", 2, "LTYPE", 70, len(w.strokes))
	for _, s := range w.strokes {
		total := 0.0
		for _, l := range s.Lengths {
			total += math.Abs(l)
		}
		w.groups(out, 0, "LTYPE", 2, s.Name, 70, 0, 3, s.Shows, 72, 65, 73, len(s.Lengths), 40, w.real(total))
		for _, l := range s.Lengths {
			w.groups(out, 49, w.real(l))
		}
	}
	w.groups(out, 0, "ENDTAB", 0, "TABLE", 2, "LAYER", 70, len(w.layers)+1)
	w.groups(out, 0, "LAYER", 2, "0", 70, 0, 62, int(White), 6, Full.Name)
	for _, l := range w.layers {
		w.groups(out, 0, "LAYER", 2, l.name, 70, 0, 62, int(l.colour), 6, l.stroke)
	}
	w.groups(out, 0, "ENDTAB", 0, "TABLE", 2, "STYLE", 70, 1, 0, "STYLE", 2, "STANDARD", 70, 0, 40, "0.0", 41, "1.0", 50, "0.0", 71, 0, 42, w.real(0.1), 3, "txt", 4, "", 0, "ENDTAB", 0, "ENDSEC")
}
