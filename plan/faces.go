package plan

import (
	"math"
	"sort"
)

// face is one region of the network: its outer ring anticlockwise, its holes
// clockwise, as numbers of points.
type face struct {
	outer []int
	holes [][]int
}

// split returns the bounded regions of the network. An edge with the same region
// on both sides (a joint that stops in the middle of a panel, or one that reaches
// only a hole) splits nothing and is taken out first.
func (n network) split() []face {
	walks, side := n.walk(n.edges)
	var kept []netEdge
	for i, e := range n.edges {
		if side[2*i] != side[2*i+1] {
			kept = append(kept, e)
		}
	}
	if len(kept) < len(n.edges) {
		walks, _ = n.walk(kept)
	}
	var faces []face
	var loose [][]int
	for _, w := range walks {
		outer, holes := n.untangle(w)
		if outer == nil {
			loose = append(loose, holes...)
			continue
		}
		faces = append(faces, face{outer, holes})
	}
	for _, hole := range loose {
		if i := n.smallestAround(faces, hole); i >= 0 {
			faces[i].holes = append(faces[i].holes, hole)
		}
	}
	return faces
}

// walk goes round every region with it on the left and returns the rounds, and for
// each directed edge (2i along edge i, 2i+1 against it) the number of its round.
func (n network) walk(edges []netEdge) (rounds [][]int, roundOf []int) {
	out, place := n.leaving(edges)
	roundOf = make([]int, 2*len(edges))
	for h := range roundOf {
		roundOf[h] = -1
	}
	for start := range roundOf {
		if roundOf[start] >= 0 {
			continue
		}
		var round []int
		for h := start; roundOf[h] < 0; {
			roundOf[h] = len(rounds)
			round = append(round, tail(edges, h))
			around := out[tail(edges, h^1)]
			// the next edge with the region on the left is the one just clockwise of the way back
			h = around[(place[h^1]+len(around)-1)%len(around)]
		}
		rounds = append(rounds, round)
	}
	return rounds, roundOf
}

// tail returns the point a directed edge leaves.
func tail(edges []netEdge, h int) int {
	if h%2 == 0 {
		return edges[h/2].from
	}
	return edges[h/2].to
}

// leaving returns the directed edges that leave each point, anticlockwise, and the
// place of each directed edge in its point's list.
func (n network) leaving(edges []netEdge) (out [][]int, place []int) {
	out = make([][]int, len(n.points))
	for h := range 2 * len(edges) {
		p := tail(edges, h)
		out[p] = append(out[p], h)
	}
	place = make([]int, 2*len(edges))
	for p, around := range out {
		angle := func(h int) float64 {
			v := n.points[tail(edges, h^1)].Minus(n.points[p])
			return math.Atan2(v.Y, v.X)
		}
		sort.Slice(around, func(i, j int) bool {
			if a, b := angle(around[i]), angle(around[j]); a != b {
				return a < b
			}
			return around[i] < around[j]
		})
		for i, h := range around {
			place[h] = i
		}
	}
	return out, place
}

// untangle parts a round that passes a point twice into simple loops: the one
// running anticlockwise is the outer ring, the others are holes that touch it.
func (n network) untangle(round []int) (outer []int, holes [][]int) {
	var stack []int
	at := map[int]int{}
	take := func(loop []int) {
		if len(loop) < 3 {
			return
		}
		if n.ring(loop).SignedArea() > 0 && outer == nil {
			outer = loop
			return
		}
		holes = append(holes, loop)
	}
	for _, p := range round {
		if i, seen := at[p]; seen {
			take(append([]int{}, stack[i:]...))
			for _, q := range stack[i+1:] {
				delete(at, q)
			}
			stack = stack[:i+1]
			continue
		}
		at[p] = len(stack)
		stack = append(stack, p)
	}
	take(stack)
	return outer, holes
}

func (n network) ring(loop []int) Ring {
	r := make(Ring, len(loop))
	for i, p := range loop {
		r[i] = n.points[p]
	}
	return r
}

func (n network) smallestAround(faces []face, hole []int) int {
	best, area := -1, math.Inf(1)
	for i, f := range faces {
		r := n.ring(f.outer)
		if a := r.Area(); a < area && !shares(f.outer, hole) && r.Contains(n.points[hole[0]]) {
			best, area = i, a
		}
	}
	return best
}

func shares(a, b []int) bool {
	in := map[int]bool{}
	for _, p := range a {
		in[p] = true
	}
	for _, p := range b {
		if in[p] {
			return true
		}
	}
	return false
}

// somewhere returns a point well inside the ring less its holes: the middle of the
// widest stretch on lines between the heights of the points.
func somewhere(r Ring, holes []Ring) (Point, bool) {
	var heights []float64
	for _, ring := range append([]Ring{r}, holes...) {
		for _, p := range ring {
			heights = append(heights, p.Y)
		}
	}
	sort.Float64s(heights)
	best, at := 0.0, Point{}
	for i := 1; i < len(heights); i++ {
		rise := heights[i] - heights[i-1]
		if rise <= 0 {
			continue
		}
		y := heights[i-1] + rise/2
		inside := cut(Point{0, y}, Point{1, 0}, r)
		for _, h := range holes {
			inside = less(inside, cut(Point{0, y}, Point{1, 0}, h))
		}
		for _, s := range inside {
			if w := math.Min(s.to-s.from, rise); w > best {
				best, at = w, Point{(s.from + s.to) / 2, y}
			}
		}
	}
	return at, best > 0
}
