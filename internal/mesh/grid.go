package mesh

import (
	"math"
	"slices"
)

// A grid is a domain all of whose rings and lines run along x or y. Its
// coordinates cut it into rectangles, and those into even smaller ones, each of
// two triangles. That takes far less time than placing points one by one.
type grid struct {
	b      *builder
	x, y   axis
	node   []int32 // point number at column, row of the fine grid, or -1
	first  []int32 // the first of the two triangles of each fine cell, or -1
	inside []bool  // per coarse cell
	w      *work
}

// An axis is one direction: the coordinates of the input and those in between.
type axis struct {
	coarse []float64
	fine   []float64
	from   []int // where each coarse coordinate stands among the fine ones
	of     []int // the coarse interval of each fine interval
}

// structured meshes d as a grid if it is one and the triangles come out with the
// angles asked for; otherwise it returns nil.
func (b *builder) structured() *Mesh {
	d := b.domain
	h, uniform := d.Size.(Uniform)
	if !uniform || d.Unstructured || len(d.Points) > 0 || !upright(d.Outline, true) || !upright(d.Holes, true) || !upright(d.Lines, false) {
		return nil
	}
	g := &grid{b: b}
	xs, ys := b.coordinates()
	side := float64(h) / math.Sqrt2
	if !g.x.divide(xs, side) || !g.y.divide(ys, side) || !g.evenEnough() {
		return nil
	}
	g.findInside()
	g.makeTriangles()
	g.layMarks()
	m := g.w.mesh(b.clipped(), nil)
	m.Structured = true
	return m
}

// upright tells whether every side of every path runs exactly along x or y.
func upright(paths [][]Point, closed bool) bool {
	for _, path := range paths {
		for i, p := range path {
			if i == 0 && !closed {
				continue
			}
			q := path[(i+len(path)-1)%len(path)]
			if p[0] != q[0] && p[1] != q[1] {
				return false
			}
		}
	}
	return true
}

// coordinates lists the x and the y of all points in use, each once.
func (b *builder) coordinates() (xs, ys []float64) {
	for v, p := range b.t.points {
		if b.t.around[v] >= 0 {
			xs, ys = append(xs, p[0]), append(ys, p[1])
		}
	}
	slices.Sort(xs)
	slices.Sort(ys)
	return slices.Compact(xs), slices.Compact(ys)
}

// mostAcross keeps a grid from being made of a great many slivers.
const mostAcross = 1 << 14

// divide cuts each interval into equal parts no longer than side.
func (a *axis) divide(coarse []float64, side float64) bool {
	a.coarse = coarse
	for i, c := range coarse {
		a.from = append(a.from, len(a.fine))
		a.fine = append(a.fine, c)
		if i+1 == len(coarse) {
			break
		}
		// A little slack, so that 5 m in parts of 0.25 m is 20 parts and not 21.
		parts := math.Ceil((coarse[i+1] - c) / side * (1 - 1e-12))
		if !(float64(len(a.fine))+parts < mostAcross) {
			return false
		}
		for k := 0; k < int(parts); k++ {
			if k > 0 {
				a.fine = append(a.fine, c+(coarse[i+1]-c)*float64(k)/parts)
			}
			a.of = append(a.of, i)
		}
	}
	return true
}

// shortestAndLongest are over the fine intervals.
func (a *axis) shortestAndLongest() (short, long float64) {
	short = math.Inf(1)
	for i := 1; i < len(a.fine); i++ {
		short, long = min(short, a.fine[i]-a.fine[i-1]), max(long, a.fine[i]-a.fine[i-1])
	}
	return short, long
}

// evenEnough tells whether the flattest rectangle keeps the smallest angle.
func (g *grid) evenEnough() bool {
	xShort, xLong := g.x.shortestAndLongest()
	yShort, yLong := g.y.shortestAndLongest()
	limit := g.b.domain.MinAngle
	if limit == 0 {
		limit = defaultMinAngle
	}
	return min(xShort/yLong, yShort/xLong) >= math.Tan(limit*math.Pi/180)
}

// findInside asks the triangulation of the input about the middle of each coarse
// cell.
func (g *grid) findInside() {
	plain := &Mesh{Points: g.b.t.points}
	for tri := range g.b.t.corner {
		plain.Triangles = append(plain.Triangles, [3]int32(g.b.t.corner[tri].v[:3]))
	}
	for r := 1; r < len(g.y.coarse); r++ {
		for c := 1; c < len(g.x.coarse); c++ {
			p := Point{(g.x.coarse[c-1] + g.x.coarse[c]) / 2, (g.y.coarse[r-1] + g.y.coarse[r]) / 2}
			g.inside = append(g.inside, plain.Locate(p) >= 0)
		}
	}
}

func (g *grid) holds(column, row int) bool {
	return g.inside[g.y.of[row]*(len(g.x.coarse)-1)+g.x.of[column]]
}

// makeTriangles fills the inside cells, row by row.
func (g *grid) makeTriangles() {
	t := &triangulation{}
	g.w = &work{domain: *g.b.domain, t: t, table: g.b.table, snap: g.b.snap}
	wide := len(g.x.fine)
	g.node = slices.Repeat([]int32{-1}, wide*len(g.y.fine))
	g.first = slices.Repeat([]int32{-1}, len(g.x.of)*len(g.y.of))
	for row := range g.y.of {
		for column := range g.x.of {
			if !g.holds(column, row) {
				continue
			}
			a, b := g.point(column, row), g.point(column+1, row)
			c, d := g.point(column+1, row+1), g.point(column, row+1)
			if (column+row)%2 == 1 {
				a, b, c, d = b, c, d, a
			}
			one, two := t.newTriangle(a, b, c), t.newTriangle(a, c, d)
			t.join(4*one+2, 4*two)
			g.first[row*len(g.x.of)+column] = one
			if column > 0 {
				g.joinCells(column, row, west, column-1, row, east)
			}
			if row > 0 {
				g.joinCells(column, row, south, column, row-1, north)
			}
		}
	}
}

func (g *grid) point(column, row int) int32 {
	n := &g.node[row*len(g.x.fine)+column]
	if *n < 0 {
		*n = int32(len(g.w.t.points))
		g.w.t.points = append(g.w.t.points, Point{g.x.fine[column], g.y.fine[row]})
		g.w.t.around = append(g.w.t.around, -1)
		g.w.on = append(g.w.on, free)
	}
	return *n
}

// The sides of a cell.
const (
	south = iota
	east
	north
	west
)

// side is the side of a triangle that lies on one side of a cell, or -1. Cells
// are cut one way and the other in turn.
func (g *grid) side(column, row, direction int) int32 {
	one := g.first[row*len(g.x.of)+column]
	if one < 0 {
		return -1
	}
	if (column+row)%2 == 1 {
		direction = (direction + 3) % 4
	}
	return [4]int32{4 * one, 4*one + 1, 4*one + 5, 4*one + 6}[direction]
}

func (g *grid) joinCells(column, row, direction, otherColumn, otherRow, otherDirection int) {
	if other := g.side(otherColumn, otherRow, otherDirection); other >= 0 {
		g.w.t.join(g.side(column, row, direction), other)
	}
}

// layMarks puts the segments of the input on the sides they run along.
func (g *grid) layMarks() {
	for i := range g.b.segments {
		if s := g.b.segments[i]; !g.b.hidden[i] {
			a, b := g.b.t.points[s.a], g.b.t.points[s.b]
			g.layMark(min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1]), s)
		}
	}
}

func (g *grid) layMark(left, low, right, high float64, s segment) {
	c, _ := slices.BinarySearch(g.x.coarse, left)
	cEnd, _ := slices.BinarySearch(g.x.coarse, right)
	r, _ := slices.BinarySearch(g.y.coarse, low)
	rEnd, _ := slices.BinarySearch(g.y.coarse, high)
	column, columnEnd, row, rowEnd := g.x.from[c], g.x.from[cEnd], g.y.from[r], g.y.from[rEnd]
	wide := len(g.x.fine)
	s.a, s.b = g.node[row*wide+column], g.node[rowEnd*wide+columnEnd]
	number := int32(len(g.w.segments))
	g.w.segments = append(g.w.segments, s)
	for k := column; k < columnEnd; k++ {
		g.mark(k, row, south, k, row-1, north, number)
		g.stand(k, row, number, k > column)
	}
	for k := row; k < rowEnd; k++ {
		g.mark(column, k, west, column-1, k, east, number)
		g.stand(column, k, number, k > row)
	}
	g.stand(columnEnd, rowEnd, number, false)
}

// mark lays a segment on the side between two cells, of which one may not exist.
func (g *grid) mark(column, row, direction, otherColumn, otherRow, otherDirection int, s int32) {
	for _, at := range [2][3]int{{column, row, direction}, {otherColumn, otherRow, otherDirection}} {
		if at[0] < 0 || at[1] < 0 || at[0] >= len(g.x.of) || at[1] >= len(g.y.of) {
			continue
		}
		if side := g.side(at[0], at[1], at[2]); side >= 0 {
			g.w.t.constrain(side, s)
		}
	}
}

// stand notes that a point lies on a segment, or is one of its ends.
func (g *grid) stand(column, row int, s int32, within bool) {
	if v := g.node[row*len(g.x.fine)+column]; within {
		g.w.on[v] = s
	} else {
		g.w.on[v] = given
	}
}

// Quads pairs the triangles of a structured mesh into rectangles, corners turning
// left; ok is false for any other mesh.
func (m *Mesh) Quads() (quads [][4]int32, ok bool) {
	if !m.Structured {
		return nil, false
	}
	for k := 0; k+1 < len(m.Triangles); k += 2 {
		one, two := m.Triangles[k], m.Triangles[k+1]
		quads = append(quads, [4]int32{one[0], one[1], one[2], two[2]})
	}
	return quads, true
}
