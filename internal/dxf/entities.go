package dxf

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Bounds that keep a broken or hostile file from filling the memory.
const (
	mostThings = 500_000   // drawn, insertions counted each time
	mostPoints = 4_000_000 // of all lines
	deepest    = 12        // blocks within blocks
	mostArray  = 10_000    // rows or columns of an array
	furthest   = 1e12      // coordinate
)

// reader turns records into lines.
type reader struct {
	d       *Drawing
	f       *file
	skipped map[[2]string]int // index in d.Skipped
	left    int               // things that may still be drawn
	points  int
	err     error
}

// place is where and how things are drawn: at the top, or within an insertion.
type place struct {
	frame  frame
	layer  string // of the insertion, for what lies on layer 0
	inside []string
}

func (r *reader) everything() error {
	r.draw(r.f.entities, place{frame: world})
	return r.err
}

// fail keeps the first error.
func (r *reader) fail(line, code int, found, want string) {
	if r.err == nil {
		r.err = &Error{Line: line, Code: code, Found: found, Want: want, Bytes: r.f.bytes}
	}
}

// skip counts a thing that is left out.
func (r *reader) skip(e record, why string) {
	key := [2]string{e.kind, why}
	i, ok := r.skipped[key]
	if !ok {
		i = len(r.d.Skipped)
		r.skipped[key] = i
		r.d.Skipped = append(r.d.Skipped, Skipped{Kind: e.kind, Why: why, First: e.line})
	}
	r.d.Skipped[i].Count++
}

// draw draws things one after another. A POLYLINE takes the records up to SEQEND.
func (r *reader) draw(things []record, at place) {
	for i := 0; i < len(things) && r.err == nil; i++ {
		e := things[i]
		if r.left--; r.left < 0 {
			r.fail(e.line, 0, "more than "+strconv.Itoa(mostThings)+" things to draw", "a drawing of the slab alone")
			return
		}
		n := 0
		if e.kind == "POLYLINE" || e.kind == "INSERT" && r.whole(e, 66, 0) == 1 {
			for n = i + 1; n < len(things) && (things[n].kind == "VERTEX" || things[n].kind == "ATTRIB"); n++ {
			}
		}
		switch {
		case r.whole(e, 67, 0) == 1:
			r.skip(e, "it stands on a sheet (paper space), not in the model")
		case r.whole(e, 60, 0) == 1:
			r.skip(e, "it is marked as not to be seen")
		default:
			r.thing(e, things[i+1:max(n, i+1)], at)
		}
		if n > 0 {
			i = n - 1
			if n < len(things) && things[n].kind == "SEQEND" {
				i = n
			}
		}
	}
}

// thing draws one; parts are the vertices of a polyline.
func (r *reader) thing(e record, parts []record, at place) {
	switch e.kind {
	case "LINE":
		r.add(e, at, []vector{r.point(e, 10), r.point(e, 11)}, false)
	case "LWPOLYLINE":
		r.lightPolyline(e, at)
	case "POLYLINE":
		r.polyline(e, parts, at)
	case "ARC", "CIRCLE":
		r.arc(e, at)
	case "ELLIPSE":
		r.ellipse(e, at)
	case "SPLINE":
		r.spline(e, at)
	case "INSERT":
		r.insert(e, at)
	case "TEXT", "MTEXT":
		r.text(e, at)
	case "SEQEND", "ENDSEC":
	case "HATCH":
		r.skip(e, "a hatch fills an area and is no line; its edge is read only where it is drawn as lines")
	case "VERTEX", "ATTRIB", "ATTDEF":
		r.skip(e, "it stands without what it belongs to")
	case "DIMENSION", "LEADER", "MULTILEADER", "TOLERANCE":
		r.skip(e, "a measure or a pointer is no line of the slab")
	case "VIEWPORT":
		r.skip(e, "a window of a sheet")
	case "POINT":
		r.skip(e, "a point has no length")
	default:
		r.skip(e, "not a line in plan")
	}
}

// number returns the value of the first group of a code; absent is what it is
// without one.
func (r *reader) number(e record, code int, absent float64) float64 {
	for _, t := range e.tags {
		if t.code == code {
			return r.value(t)
		}
	}
	return absent
}

func (r *reader) value(t tag) float64 {
	v, err := strconv.ParseFloat(strings.TrimSpace(t.value), 64)
	if err != nil || math.IsNaN(v) || math.Abs(v) > furthest {
		r.fail(t.line, t.code, quoted(t.value), fmt.Sprintf("a number between −%g and %g", furthest, furthest))
		return 0
	}
	return v
}

// whole returns a whole number; a bit field or a count.
func (r *reader) whole(e record, code, absent int) int {
	return int(r.number(e, code, float64(absent)))
}

// must returns the value of a code that has to be there.
func (r *reader) must(e record, code int) float64 {
	for _, t := range e.tags {
		if t.code == code {
			return r.value(t)
		}
	}
	r.fail(e.line, code, "no such group in the "+e.kind+" that begins here", "a number")
	return 0
}

// point returns the place of codes c, c+10, c+20; the height may be absent.
func (r *reader) point(e record, code int) vector {
	return vector{r.must(e, code), r.must(e, code+10), r.number(e, code+20, 0)}
}

// normal returns the direction an object's plane stands square to.
func (r *reader) normal(e record) frame {
	return objectFrame(vector{r.number(e, 210, 0), r.number(e, 220, 0), r.number(e, 230, 1)})
}

// tolerance is the chord tolerance in the units of a place, for a curve of so large
// a radius there.
func (r *reader) tolerance(at place, radius float64) float64 {
	if r.d.Chord == 0 {
		return chordWithoutUnit * radius
	}
	if s := at.frame.stretch(); s > 0 {
		return r.d.Chord / s
	}
	return r.d.Chord
}

// layerOf returns the layer a thing is drawn on: within an insertion, layer 0 is
// that of the insertion.
func (r *reader) layerOf(e record, at place) string {
	name := strings.TrimSpace(r.f.letters.plain(e.word(8)))
	if name == "" {
		name = "0"
	}
	if name == "0" && at.layer != "" {
		return at.layer
	}
	return name
}

// add keeps a line, its points in the coordinates of the place. Points on top of one
// another count once; a line without length is left out.
func (r *reader) add(e record, at place, points []vector, closed bool) {
	if r.err != nil {
		return
	}
	line := Line{Layer: r.layerOf(e, at), Kind: e.kind, Closed: closed, At: e.line}
	for _, v := range points {
		p := at.frame.at(v).flat()
		if !(math.Abs(p.X) <= furthest) || !(math.Abs(p.Y) <= furthest) {
			r.fail(e.line, 0, "a "+e.kind+" that reaches further than can be drawn", fmt.Sprintf("coordinates below %g", furthest))
			return
		}
		if n := len(line.Points); n == 0 || line.Points[n-1] != p {
			line.Points = append(line.Points, p)
		}
	}
	if n := len(line.Points); n > 1 && line.Points[0] == line.Points[n-1] {
		line.Points, line.Closed = line.Points[:n-1], true
	}
	if len(line.Points) < 3 {
		line.Closed = false
	}
	if len(line.Points) < 2 {
		r.skip(e, "it has no length in plan")
		return
	}
	if r.points += len(line.Points); r.points > mostPoints {
		r.fail(e.line, 0, "more than "+strconv.Itoa(mostPoints)+" points", "a drawing of the slab alone")
		return
	}
	r.d.Lines = append(r.d.Lines, line)
}
