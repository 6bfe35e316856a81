package restraint

import (
	"cmp"
	"math"
	"slices"

	"slabwright/internal/sparse"
)

// frame is a net with its open lines taken apart: which corner of which triangle
// moves with which, and the matrices that follow from it. It lasts until another
// line opens.
type frame struct {
	*net
	node   [][3]int32 // the moving node at each corner of each triangle
	nodes  int
	across [][3]int32 // the triangle facing each corner, −1 at an edge or open side
	x, y   []float64
	grad   [][6]float64 // slopes of the three shape functions along x, then along y
	sheet  []float64    // area of each triangle
	thick  []float64    // thickness of each triangle
	bed    []float64    // plan area that hangs on each node
	drag   []float64    // force at which each node slips, N
	seams  []seam
	system *system
	fan    [2][]int32 // where the triangles at each point start, and the triangles
}

// seam is one end of one open side: two nodes, or a node and the ground (−1), that
// touch, part, slide or are tied by bars.
type seam struct {
	line   int // number of the line; −1 − h for hold h
	key    seamKey
	first  int32 // to the left of the side
	second int32
	normal [2]float64 // from first to second
	area   float64    // length times thickness that it stands for
}

// seamKey names a seam whatever the numbering of nodes.
type seamKey struct {
	side side
	end  int32 // the point of the net
}

// newFrame takes the net apart along cut sides; cut gives the line of each. rank, if any,
// says for the corners of triangles which are eliminated first.
func newFrame(n *net, cut map[side]int, m *Model, set Settings, rank [][3]int32) *frame {
	f := &frame{net: n}
	f.number(cut)
	f.shape(m)
	f.sew(cut, m)
	f.system = newSystem(f, len(m.Pours), set.Poisson, f.ofNodes(rank))
	return f
}

// ofNodes returns what nodes have from the corners of triangles, the least of them.
func (f *frame) ofNodes(rank [][3]int32) []int32 {
	if rank == nil {
		return nil
	}
	out := slices.Repeat([]int32{math.MaxInt32}, f.nodes)
	for t, nodes := range f.node {
		for i, n := range nodes {
			out[n] = min(out[n], rank[t][i])
		}
	}
	return out
}

// ranks returns, for the corners of triangles, when each node is eliminated.
func (f *frame) ranks() [][3]int32 {
	place := f.system.symbolic.Place()
	out := make([][3]int32, len(f.node))
	for t, nodes := range f.node {
		for i, n := range nodes {
			out[t][i] = place[n]
		}
	}
	return out
}

// number gives corners that stay together the same node.
func (f *frame) number(cut map[side]int) {
	parent := make([]int32, 3*len(f.tri))
	for i := range parent {
		parent[i] = int32(i)
	}
	find := func(i int32) int32 {
		for parent[i] != i {
			parent[i] = parent[parent[i]]
			i = parent[i]
		}
		return i
	}
	f.across = slices.Repeat([][3]int32{{-1, -1, -1}}, len(f.tri))
	for s, pair := range f.beside {
		if _, open := cut[s]; open || pair[1] < 0 {
			continue
		}
		for _, p := range s {
			a, b := find(f.corner(pair[0], p)), find(f.corner(pair[1], p))
			parent[max(a, b)] = min(a, b)
		}
		f.across[pair[0]][f.facing(pair[0], s)] = pair[1]
		f.across[pair[1]][f.facing(pair[1], s)] = pair[0]
	}
	name := make([]int32, len(parent))
	f.node = make([][3]int32, len(f.tri))
	for i := range parent {
		root := find(int32(i))
		if root == int32(i) {
			name[i] = int32(f.nodes)
			f.nodes++
			p := f.at[f.tri[i/3][i%3]]
			f.x, f.y = append(f.x, p.X), append(f.y, p.Y)
		}
		f.node[i/3][i%3] = name[root]
	}
}

// corner returns 3·t + which corner of t is point p.
func (n *net) corner(t, p int32) int32 {
	for i, q := range n.tri[t] {
		if q == p {
			return 3*t + int32(i)
		}
	}
	panic("restraint: a side and its triangle do not belong together")
}

// facing returns which corner of triangle t lies opposite a side of it.
func (n *net) facing(t int32, s side) int {
	for i, q := range n.tri[t] {
		if q != s[0] && q != s[1] {
			return i
		}
	}
	panic("restraint: a side and its triangle do not belong together")
}

// shape works out slopes, areas and what hangs on each node.
func (f *frame) shape(m *Model) {
	f.grad = make([][6]float64, len(f.tri))
	f.sheet = make([]float64, len(f.tri))
	f.thick = make([]float64, len(f.tri))
	f.bed = make([]float64, f.nodes)
	for t, v := range f.tri {
		a, b, c := f.at[v[0]], f.at[v[1]], f.at[v[2]]
		double := b.Minus(a).Cross(c.Minus(a))
		f.sheet[t] = double / 2
		f.grad[t] = [6]float64{
			(b.Y - c.Y) / double, (c.Y - a.Y) / double, (a.Y - b.Y) / double,
			(c.X - b.X) / double, (a.X - c.X) / double, (b.X - a.X) / double,
		}
		f.thick[t] = m.Pours[f.pour[t]].Thickness
		for _, n := range f.node[t] {
			f.bed[n] += double / 6
		}
	}
	f.dragOf(m)
}

// dragOf works out the force at which each node slips over the base of a model.
func (f *frame) dragOf(m *Model) {
	f.drag = make([]float64, f.nodes)
	for t, nodes := range f.node {
		limit := f.sheet[t] / 3 * m.Base.Limit(f.thick[t])
		for _, n := range nodes {
			f.drag[n] += limit
		}
	}
}

// sew lists the seams of open sides and held edges in a fixed order.
func (f *frame) sew(cut map[side]int, m *Model) {
	add := func(s side, line int) {
		pair := f.beside[s]
		left, right := pair[0], pair[1]
		a, b := s[0], s[1]
		if i := f.corner(left, a) % 3; f.tri[left][(i+1)%3] != b { // a→b must run left round its triangle
			if right >= 0 {
				left, right = right, left
			} else {
				a, b = b, a
			}
		}
		d := f.at[b].Minus(f.at[a])
		length := d.Norm()
		thick := f.thick[left]
		if right >= 0 {
			thick = math.Min(thick, f.thick[right])
		}
		for _, p := range []int32{a, b} {
			seam := seam{line: line, key: seamKey{s, p}, first: f.node[left][f.corner(left, p)%3], second: -1,
				normal: [2]float64{d.Y / length, -d.X / length}, area: length / 2 * thick}
			if right >= 0 {
				seam.second = f.node[right][f.corner(right, p)%3]
			}
			if seam.first != seam.second {
				f.seams = append(f.seams, seam)
			}
		}
	}
	for s, line := range cut {
		add(s, line)
	}
	for s, h := range f.onHold {
		add(s, -1-h)
	}
	slices.SortFunc(f.seams, func(a, b seam) int {
		return cmp.Or(cmp.Compare(a.line, b.line), cmp.Compare(a.key.side[0], b.key.side[0]), cmp.Compare(a.key.side[1], b.key.side[1]), cmp.Compare(a.key.end, b.key.end))
	})
}

// move returns how far the second side of a seam has moved from the first, across
// (opening positive) and along.
func (s *seam) move(u []float64) (across, along float64) {
	dx, dy := -u[2*s.first], -u[2*s.first+1]
	if s.second >= 0 {
		dx += u[2*s.second]
		dy += u[2*s.second+1]
	}
	return dx*s.normal[0] + dy*s.normal[1], -dx*s.normal[1] + dy*s.normal[0]
}

// strainIn returns strain xx, yy and twice xy of triangle t.
func (f *frame) strainIn(t int, u []float64) [3]float64 {
	g := &f.grad[t]
	var e [3]float64
	for i, n := range f.node[t] {
		e[0] += g[i] * u[2*n]
		e[1] += g[3+i] * u[2*n+1]
		e[2] += g[3+i]*u[2*n] + g[i]*u[2*n+1]
	}
	return e
}

// connectivity lists triangles, then seams between nodes, then single nodes.
func (f *frame) connectivity() sparse.Connectivity {
	c := sparse.Connectivity{Start: []int32{0}}
	add := func(nodes ...int32) {
		c.Node = append(c.Node, nodes...)
		c.Start = append(c.Start, int32(len(c.Node)))
	}
	for _, v := range f.node {
		add(v[:]...)
	}
	for _, s := range f.seams {
		if s.second >= 0 {
			add(s.first, s.second)
		} else {
			add(s.first)
		}
	}
	for n := range f.nodes {
		add(int32(n))
	}
	return c
}

// around lists the triangles at a point of the net.
func (f *frame) around(p int32) []int32 {
	if f.fan[0] == nil {
		start := make([]int32, len(f.at)+2)
		for _, v := range f.tri {
			for _, q := range v {
				start[q+2]++
			}
		}
		for i := 2; i < len(start); i++ {
			start[i] += start[i-1]
		}
		list := make([]int32, 3*len(f.tri))
		for t, v := range f.tri {
			for _, q := range v {
				list[start[q+1]] = int32(t)
				start[q+1]++
			}
		}
		f.fan = [2][]int32{start, list}
	}
	return f.fan[1][f.fan[0][p]:f.fan[0][p+1]]
}
