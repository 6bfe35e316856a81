package dxf

import (
	"math"
	"strings"
)

// lightPolyline draws a run of pieces and arcs given in one record.
func (r *reader) lightPolyline(e record, at place) {
	elevation := r.number(e, 38, 0)
	var corners []corner
	for _, t := range e.tags {
		switch n := len(corners); {
		case t.code == 10:
			corners = append(corners, corner{at: vector{x: r.value(t), z: elevation}, line: t.line})
		case t.code == 20 && n > 0:
			corners[n-1].at.y, corners[n-1].whole = r.value(t), true
		case t.code == 42 && n > 0:
			corners[n-1].bulge = r.value(t)
		}
	}
	for _, c := range corners {
		if !c.whole {
			r.fail(c.line, 20, "a corner without its y", "a number")
			return
		}
	}
	at.frame = at.frame.then(r.normal(e))
	r.run(e, at, corners, r.whole(e, 70, 0)&1 == 1)
}

// corner is a corner of a polyline with the bulge of the piece that leaves it.
type corner struct {
	at    vector
	bulge float64
	line  int
	whole bool
}

// Flags of a polyline (70) and of its vertices.
const (
	closedFlag    = 1
	inSpace       = 8
	meshFlag      = 16
	facesFlag     = 64
	controlVertex = 16
)

// polyline draws the older form, its corners in records of their own.
func (r *reader) polyline(e record, vertices []record, at place) {
	flags := r.whole(e, 70, 0)
	if flags&(meshFlag|facesFlag) != 0 {
		r.skip(e, "a mesh of faces, not a line")
		return
	}
	var corners []corner
	for _, v := range vertices {
		if v.kind != "VERTEX" || r.whole(v, 70, 0)&controlVertex != 0 {
			continue // a point of the frame a curve was fitted to, not of the curve
		}
		corners = append(corners, corner{at: r.point(v, 10), bulge: r.number(v, 42, 0)})
	}
	if flags&inSpace == 0 {
		at.frame = at.frame.then(r.normal(e))
	}
	r.run(e, at, corners, flags&closedFlag != 0)
}

// run draws corners joined by straight pieces and arcs.
func (r *reader) run(e record, at place, corners []corner, closed bool) {
	if len(corners) == 0 || r.err != nil {
		r.skip(e, "it has no length in plan")
		return
	}
	points := []vector{corners[0].at}
	n := len(corners)
	for i, c := range corners {
		if i+1 == n && !closed {
			break
		}
		next := corners[(i+1)%n].at
		radius := c.at.to(next) * (1 + c.bulge*c.bulge) / (4 * math.Max(math.Abs(c.bulge), 1e-12))
		points = append(points, bulged(c.at, next, c.bulge, r.tolerance(at, radius))...)
	}
	r.add(e, at, points, closed)
}

// arc draws an arc or a whole circle.
func (r *reader) arc(e record, at place) {
	centre, radius := r.point(e, 10), r.must(e, 40)
	from, turn := 0.0, 2*math.Pi
	if e.kind == "ARC" {
		from = r.must(e, 50) * math.Pi / 180
		turn = turnTo(from, r.must(e, 51)*math.Pi/180)
	}
	if r.err == nil && !(radius > 0) {
		r.fail(e.line, 40, "a radius of "+quoted(e.word(40)), "a radius above zero")
		return
	}
	at.frame = at.frame.then(r.normal(e))
	x, y := vector{x: radius}, vector{y: radius}
	r.add(e, at, r.closing(arcPoints(centre, x, y, from, turn, r.tolerance(at, radius)), turn), turn >= 2*math.Pi)
}

// turnTo returns the turn from one direction anticlockwise to another, above zero up
// to a whole turn.
func turnTo(from, to float64) float64 {
	turn := math.Mod(to-from, 2*math.Pi)
	if turn <= 1e-12 {
		turn += 2 * math.Pi
	}
	return turn
}

// closing makes the last point of a whole turn the first one, digit for digit.
func (r *reader) closing(points []vector, turn float64) []vector {
	if turn >= 2*math.Pi {
		points[len(points)-1] = points[0]
	}
	return points
}

// ellipse draws a whole ellipse or an arc of one. Its long half axis is given in the
// coordinates of the drawing, not of the object.
func (r *reader) ellipse(e record, at place) {
	centre, major, ratio := r.point(e, 10), r.point(e, 11), r.number(e, 40, 1)
	if r.err == nil && (!(ratio != 0) || major.norm() == 0) {
		r.skip(e, "it has no length in plan")
		return
	}
	n := vector{r.number(e, 210, 0), r.number(e, 220, 0), r.number(e, 230, 1)}
	if n.norm() == 0 {
		n = vector{z: 1}
	}
	minor := n.times(ratio / n.norm()).cross(major)
	from := r.number(e, 41, 0)
	to := r.number(e, 42, 2*math.Pi)
	turn := turnTo(from, to)
	if math.Abs(to-from-2*math.Pi) < 1e-5 { // written with six digits
		turn = 2 * math.Pi
	}
	r.add(e, at, r.closing(arcPoints(centre, major, minor, from, turn, r.tolerance(at, major.norm())), turn), turn >= 2*math.Pi)
}

// splineClosed is the flag (70) of a spline that comes back to its start.
const splineClosed = 1

// spline draws a B-spline; one given only by the points it is to pass through is
// drawn as straight pieces from each to the next, which is said.
func (r *reader) spline(e record, at place) {
	s := spline{degree: r.whole(e, 71, 3)}
	var fit []vector
	for _, t := range e.tags {
		switch t.code {
		case 40:
			s.knots = append(s.knots, r.value(t))
		case 41:
			s.weights = append(s.weights, r.value(t))
		case 10:
			s.control = append(s.control, vector{x: r.value(t)})
		case 20:
			s.control = r.fill(t, s.control)
		case 11:
			fit = append(fit, vector{x: r.value(t)})
		case 21:
			fit = r.fill(t, fit)
		}
	}
	closed := r.whole(e, 70, 0)&splineClosed != 0
	if len(s.control) == 0 && len(fit) > 1 {
		r.d.Notes = append(r.d.Notes, "A SPLINE is given only by points it passes through; they are joined by straight pieces.")
		r.add(e, at, fit, closed)
		return
	}
	if why := s.why(); why != "" {
		r.fail(e.line, 0, "a SPLINE that cannot be drawn", why)
	}
	if r.err != nil {
		return
	}
	size := 0.0
	for _, c := range s.control {
		size = max(size, c.to(s.control[0]))
	}
	points := s.points(r.tolerance(at, size))
	if n := len(points); n > 2 && points[0].to(points[n-1]) <= 1e-9*size {
		points[n-1] = points[0]
	}
	r.add(e, at, points, closed)
}

// fill puts y into the last point.
func (r *reader) fill(t tag, points []vector) []vector {
	if len(points) == 0 {
		r.fail(t.line, t.code, "a y before its x", "a point of a SPLINE")
		return points
	}
	points[len(points)-1].y = r.value(t)
	return points
}

// insert draws the things of a block at another place, once or in rows and columns.
func (r *reader) insert(e record, at place) {
	name := strings.ToUpper(e.word(2))
	b, ok := r.f.blocks[name]
	if !ok {
		r.skip(e, "its block is not in the file")
		return
	}
	for _, outer := range at.inside {
		if outer == name {
			r.fail(e.line, 2, "block "+quoted(r.f.letters.plain(e.word(2)))+", which holds itself", "a block that does not")
			return
		}
	}
	if len(at.inside) >= deepest {
		r.fail(e.line, 2, "blocks within blocks more than 12 deep", "fewer")
		return
	}
	columns, rows := r.array(e, 70), r.array(e, 71)
	base := vector{r.number(b.begin, 10, 0), r.number(b.begin, 20, 0), r.number(b.begin, 30, 0)}
	scale := vector{r.number(e, 41, 1), r.number(e, 42, 1), r.number(e, 43, 1)}
	turn := scaledTurned(vector{1, 1, 1}, r.number(e, 50, 0))
	object := r.normal(e).then(moved(r.point(e, 10))).then(turn)
	inner := place{layer: r.layerOf(e, at), inside: append(append([]string{}, at.inside...), name)}
	for row := range rows {
		for column := range columns {
			if r.err != nil {
				return
			}
			if r.left--; r.left < 0 {
				r.fail(e.line, 0, "more things to draw than can be", "a drawing of the slab alone")
				return
			}
			step := moved(vector{x: float64(column) * r.number(e, 44, 0), y: float64(row) * r.number(e, 45, 0)})
			own := scaledTurned(scale, 0).then(moved(base.times(-1)))
			inner.frame = at.frame.then(object).then(step).then(own)
			r.draw(b.things, inner)
		}
	}
}

// array reads a number of rows or columns.
func (r *reader) array(e record, code int) int {
	n := r.whole(e, code, 1)
	if n > mostArray {
		r.fail(e.line, code, "an array of "+quoted(e.word(code)), "10 000 at most")
		return 1
	}
	return max(n, 1)
}

// text keeps words; those of the longer form stripped of their dress.
func (r *reader) text(e record, at place) {
	if e.kind == "TEXT" {
		at.frame = at.frame.then(r.normal(e))
	}
	var words strings.Builder
	for _, t := range e.tags {
		if t.code == 1 || t.code == 3 && e.kind == "MTEXT" {
			words.WriteString(t.value)
		}
	}
	plain := words.String()
	if e.kind == "MTEXT" {
		plain = undressed(plain)
	}
	p := at.frame.at(r.point(e, 10)).flat()
	if r.err == nil {
		r.d.Texts = append(r.d.Texts, Text{Layer: r.layerOf(e, at), At: p, Height: r.number(e, 40, 0) * at.frame.y.norm(), Words: r.f.letters.plain(plain)})
	}
}

// undressed takes the marks of fonts, colours and heights out of an MTEXT.
func undressed(s string) string {
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		if s[i] == '{' || s[i] == '}' {
			continue
		}
		if s[i] != '\\' || i+1 == len(s) {
			b.WriteByte(s[i])
			continue
		}
		i++
		switch s[i] {
		case 'P', 'N', 'X':
			b.WriteByte('\n')
		case '~':
			b.WriteByte(' ')
		case '\\', '{', '}':
			b.WriteByte(s[i])
		case 'U', 'M':
			b.WriteString(s[i-1 : i+1]) // a letter by number, read later
		case 'L', 'l', 'O', 'o', 'K', 'k':
		default: // up to a semicolon
			if end := strings.IndexByte(s[i:], ';'); end >= 0 {
				i += end
			}
		}
	}
	return b.String()
}
