package dxf

import "math"

// Joined is lines put together at their ends.
type Joined struct {
	Closed   []Line
	Open     []Line
	Branches []Point // where three or more ends meet: which two belong together is not known
}

// Join puts lines together whose ends lie no further apart than tol, in the units of
// the drawing. Lines that are closed already stay; a straight piece drawn twice
// counts once. Where three or more ends meet, joining stops.
func Join(lines []Line, tol float64) Joined {
	j := joiner{tol: tol, cells: map[[2]int64][]int{}}
	var out Joined
	for _, l := range lines {
		if l.Closed {
			out.Closed = append(out.Closed, l)
			continue
		}
		j.put(l)
	}
	for n, ends := range j.ends {
		if len(ends) > 2 {
			out.Branches = append(out.Branches, j.at[n])
		}
	}
	j.chains(&out)
	return out
}

// edge is a line between two nodes.
type edge struct {
	line Line
	from int
	to   int
	used bool
}

type joiner struct {
	tol   float64
	at    []Point // nodes
	ends  [][]int // edges at a node; a line that comes back to it stands twice
	edges []edge
	cells map[[2]int64][]int // nodes by cell
	twice map[[2]int]bool
}

// node returns the node within tol of p, or a new one.
func (j *joiner) node(p Point) int {
	size := j.tol
	if !(size > 0) {
		size = 1e-12
	}
	cx, cy := cell(p.X/size), cell(p.Y/size)
	for dx := int64(-1); dx <= 1; dx++ {
		for dy := int64(-1); dy <= 1; dy++ {
			for _, n := range j.cells[[2]int64{cx + dx, cy + dy}] {
				if j.at[n].To(p) <= j.tol {
					return n
				}
			}
		}
	}
	n := len(j.at)
	j.at = append(j.at, p)
	j.ends = append(j.ends, nil)
	key := [2]int64{cx, cy}
	j.cells[key] = append(j.cells[key], n)
	return n
}

// cell rounds down, kept within what a whole number holds.
func cell(v float64) int64 {
	const most = 1 << 61
	return int64(math.Max(-most, math.Min(most, math.Floor(v))))
}

// put adds an open line between the nodes of its ends. A line shorter than the
// tolerance joins nothing and is dropped.
func (j *joiner) put(l Line) {
	if len(l.Points) < 2 {
		return
	}
	a, b := j.node(l.Points[0]), j.node(l.Points[len(l.Points)-1])
	if a == b && l.Length() <= 2*j.tol {
		return
	}
	if len(l.Points) == 2 {
		if j.twice == nil {
			j.twice = map[[2]int]bool{}
		}
		key := [2]int{min(a, b), max(a, b)}
		if j.twice[key] {
			return
		}
		j.twice[key] = true
	}
	n := len(j.edges)
	j.edges = append(j.edges, edge{line: l, from: a, to: b})
	j.ends[a] = append(j.ends[a], n)
	j.ends[b] = append(j.ends[b], n)
}

// chains walks from every node that is no mere joint of two, then round what is left.
func (j *joiner) chains(out *Joined) {
	for pass := range 2 {
		for i := range j.edges {
			e := &j.edges[i]
			if e.used {
				continue
			}
			switch {
			case pass == 1 || len(j.ends[e.from]) != 2:
				j.keep(out, j.walk(i, e.from))
			case len(j.ends[e.to]) != 2:
				j.keep(out, j.walk(i, e.to))
			}
		}
	}
}

// walk follows edges from a node until a branch, a loose end or the start.
func (j *joiner) walk(i, start int) Line {
	line := Line{Layer: j.edges[i].line.Layer, Kind: j.edges[i].line.Kind, At: j.edges[i].line.At}
	for node := start; ; {
		e := &j.edges[i]
		e.used = true
		points := e.line.Points
		next := e.to
		if node == e.to && e.from != e.to {
			points, next = reversed(points), e.from
		}
		if len(line.Points) > 0 {
			points = points[1:] // within tol of the end before
		}
		line.Points = append(line.Points, points...)
		node = next
		if node == start || len(j.ends[node]) != 2 {
			line.Closed = node == start
			break
		}
		other := j.ends[node][0]
		if other == i {
			other = j.ends[node][1]
		}
		if j.edges[other].used {
			break
		}
		i = other
	}
	if n := len(line.Points); line.Closed && n > 1 {
		line.Points = line.Points[:n-1]
		line.Closed = n > 3
	}
	return line
}

func (j *joiner) keep(out *Joined, l Line) {
	if l.Closed {
		out.Closed = append(out.Closed, l)
	} else {
		out.Open = append(out.Open, l)
	}
}

func reversed(points []Point) []Point {
	out := make([]Point, len(points))
	for i, p := range points {
		out[len(points)-1-i] = p
	}
	return out
}
