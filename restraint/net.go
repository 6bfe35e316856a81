package restraint

import (
	"fmt"
	"math"

	"slabwright/internal/mesh"
	"slabwright/plan"
)

// net is the plan cut into triangles. Lines lie along sides. It can be refined where
// a crack runs; see split.go.
type net struct {
	at     []plan.Point
	tri    [][3]int32        // turning left
	pour   []int             // of each triangle
	beside map[side][2]int32 // triangles at a side, the second −1 at an edge
	onLine map[side][]int    // numbers of lines along a side, known and new ones
	onHold map[side]int      // the hold along an edge
}

// side is a side of a triangle, the lower number first.
type side [2]int32

func sideOf(a, b int32) side {
	if a > b {
		a, b = b, a
	}
	return side{a, b}
}

// newNet meshes a model.
func newNet(m Model, set Settings) (*net, []Line, error) {
	lines := m.reachedLines()
	mm, err := mesh.Build(m.domain(lines, set))
	if err != nil {
		return nil, nil, unmeshed(err)
	}
	return netOf(mm, m, lines), lines, nil
}

func unmeshed(err error) error { return fmt.Errorf("the plan cannot be cut into triangles: %w", err) }

// reachedLines returns the lines of a model, run up to what they stop just short of.
func (m Model) reachedLines() []Line {
	rings := [][]plan.Point{m.Slab.Outline}
	for _, f := range m.Slab.Fixtures {
		if f.Opening && len(f.Shape) > 2 {
			rings = append(rings, f.Shape)
		}
	}
	return reached(m.Lines, rings)
}

// domain is what is to be meshed; lines keep their numbers.
func (m Model) domain(lines []Line, set Settings) mesh.Domain {
	d := mesh.Domain{Outline: [][]mesh.Point{toMesh(m.Slab.Outline)}, Smooth: 2, Unstructured: true, Snap: 1e-4}
	for _, f := range m.Slab.Fixtures {
		if f.Opening && len(f.Shape) > 2 {
			d.Holes = append(d.Holes, toMesh(f.Shape))
		}
	}
	for _, l := range lines {
		d.Lines = append(d.Lines, toMesh(l.Path))
	}
	for _, p := range m.Pours {
		if len(p.Area) > 2 {
			d.Lines = append(d.Lines, toMesh(append(append([]plan.Point(nil), p.Area...), p.Area[0])))
		}
	}
	d.Size = mesh.Grade(set.Size, set.Growth, fineAt(m, set)...)
	return d
}

// netOf makes the net of a mesh.
func netOf(mm *mesh.Mesh, m Model, lines []Line) *net {
	n := &net{}
	for _, p := range mm.Points {
		n.at = append(n.at, plan.Point{X: p[0], Y: p[1]})
	}
	n.tri = append(n.tri, mm.Triangles...)
	n.onLine = map[side][]int{}
	for _, e := range mm.Edges() {
		for _, mark := range mm.Marks[e.Set] {
			if mark.Kind == mesh.OnLine && int(mark.Index) < len(lines) {
				s := sideOf(e.A, e.B)
				n.onLine[s] = append(n.onLine[s], int(mark.Index))
			}
		}
	}
	n.join()
	n.fill(m.Pours)
	n.hold(m.Holds)
	return n
}

func toMesh(ring []plan.Point) []mesh.Point {
	out := make([]mesh.Point, len(ring))
	for i, p := range ring {
		out[i] = mesh.Point{p.X, p.Y}
	}
	return out
}

// fineAt lists the places where stress crowds: inside corners, corners of openings,
// ends of known cracks and of holds.
func fineAt(m Model, set Settings) []mesh.Source {
	var out []mesh.Source
	add := func(p plan.Point) { out = append(out, mesh.Source{At: mesh.Point{p.X, p.Y}, Size: set.Fine}) }
	ring := plan.Ring(m.Slab.Outline).Anticlockwise()
	for i, p := range ring {
		before, after := ring[(i+len(ring)-1)%len(ring)], ring[(i+1)%len(ring)]
		if plan.Turn(before, p, after) < 0 {
			add(p)
		}
	}
	for _, f := range m.Slab.Fixtures {
		if f.Opening {
			for _, p := range f.Shape {
				add(p)
			}
		}
	}
	for _, l := range m.Lines {
		if l.Kind == CrackLine {
			add(l.Path[0])
			add(l.Path[len(l.Path)-1])
		}
	}
	for _, h := range m.Holds {
		add(h.Path[0])
		add(h.Path[len(h.Path)-1])
	}
	return out
}

// reached runs lines that stop just short of an edge or another line up to it.
func reached(lines []Line, rings [][]plan.Point) []Line {
	out := append([]Line(nil), lines...)
	for i := range out {
		path := append(plan.Polyline(nil), out[i].Path...)
		for _, end := range []int{0, len(path) - 1} {
			best, to := plan.JointReach, path[end]
			see := func(l plan.Polyline) {
				if _, at, d := l.Nearest(path[end]); d <= best {
					best, to = d, at
				}
			}
			for _, r := range rings {
				see(append(append(plan.Polyline(nil), r...), r[0]))
			}
			if best == plan.JointReach {
				for k, o := range lines {
					if k != i {
						see(o.Path)
					}
				}
			}
			path[end] = to
		}
		out[i].Path = path
	}
	return out
}

// join finds the triangles at each side.
func (n *net) join() {
	n.beside = make(map[side][2]int32, 2*len(n.tri))
	for t, v := range n.tri {
		for i := range 3 {
			s := sideOf(v[i], v[(i+1)%3])
			if have, ok := n.beside[s]; ok {
				n.beside[s] = [2]int32{have[0], int32(t)}
			} else {
				n.beside[s] = [2]int32{int32(t), -1}
			}
		}
	}
}

func (n *net) middle(t int) plan.Point {
	v := n.tri[t]
	return n.at[v[0]].Plus(n.at[v[1]]).Plus(n.at[v[2]]).Times(1. / 3)
}

func (n *net) area(t int) float64 {
	v := n.tri[t]
	return n.at[v[1]].Minus(n.at[v[0]]).Cross(n.at[v[2]].Minus(n.at[v[0]])) / 2
}

// fill gives each triangle its pour: the first whose ring holds it, else the first
// without a ring, else the nearest.
func (n *net) fill(pours []Pour) {
	n.pour = make([]int, len(n.tri))
	for t := range n.tri {
		p, rest, near, best := n.middle(t), -1, 0, math.Inf(1)
		found := -1
		for i, pour := range pours {
			if len(pour.Area) < 3 {
				if rest < 0 {
					rest = i
				}
				continue
			}
			ring := plan.Ring(pour.Area)
			if ring.Contains(p) {
				found = i
				break
			}
			if d := ring.Distance(p); d < best {
				near, best = i, d
			}
		}
		switch {
		case found >= 0:
		case rest >= 0:
			found = rest
		default:
			found = near
		}
		n.pour[t] = found
	}
}

// hold marks the edges that something holds: those that lie along it.
func (n *net) hold(holds []Hold) {
	n.onHold = map[side]int{}
	for s, t := range n.beside {
		if t[1] >= 0 {
			continue
		}
		mid := n.at[s[0]].Plus(n.at[s[1]]).Times(0.5)
		for i, h := range holds {
			line := plan.Polyline(h.Path)
			along, _, d := line.Nearest(mid)
			_, way := line.At(along)
			if d <= plan.JointReach && math.Abs(way.Cross(n.at[s[1]].Minus(n.at[s[0]]))) < 0.3*n.at[s[1]].To(n.at[s[0]]) {
				n.onHold[s] = i
				break
			}
		}
	}
}
