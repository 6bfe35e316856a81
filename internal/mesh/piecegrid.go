package mesh

import (
	"math"
	"slices"
)

// A pieceGrid is a raster of square cells that knows which points and which
// pieces each cell holds, so that neighbours are found without trying all pairs.
type pieceGrid struct {
	low          Point
	step, margin float64
	wide, high   int
	pointStart   []int32
	pointList    []int32
	pieceStart   []int32
	pieceList    []int32
	lastSeen     []int32 // per point, to report it once per search
	searches     int32
}

// mostCells keeps the raster small for a few long lines among many points.
const mostCells = 1 << 20

func newPieceGrid(points []Point, pieces []piece, margin float64) *pieceGrid {
	low, high := bounds(points)
	g := &pieceGrid{low: low, margin: margin}
	extent := max(high[0]-low[0], high[1]-low[1], 4*margin)
	cells := min(max(float64(len(points)+len(pieces)), 1), mostCells)
	area := max((high[0]-low[0])*(high[1]-low[1]), extent*extent/cells)
	g.step = max(math.Sqrt(area/cells), extent/math.Sqrt(mostCells), 2*margin)
	g.wide = int((high[0]-low[0])/g.step) + 1
	g.high = int((high[1]-low[1])/g.step) + 1
	g.placePoints(points)
	g.placePieces(points, pieces)
	g.lastSeen = make([]int32, len(points))
	return g
}

func bounds(points []Point) (low, high Point) {
	low, high = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		low = Point{min(low[0], p[0]), min(low[1], p[1])}
		high = Point{max(high[0], p[0]), max(high[1], p[1])}
	}
	return low, high
}

func (g *pieceGrid) column(x float64) int {
	return min(max(int((x-g.low[0])/g.step), 0), g.wide-1)
}

func (g *pieceGrid) row(y float64) int { return min(max(int((y-g.low[1])/g.step), 0), g.high-1) }

// along calls visit for every cell within the margin of a–b, column by column.
func (g *pieceGrid) along(a, b Point, visit func(cell int)) {
	if a[0] > b[0] {
		a, b = b, a
	}
	for c, last := g.column(a[0]-g.margin), g.column(b[0]+g.margin); c <= last; c++ {
		from, to := 0.0, 1.0
		if wide := b[0] - a[0]; wide > 2*g.margin {
			left := g.low[0] + float64(c)*g.step - 2*g.margin
			from = min(max((left-a[0])/wide, 0), 1)
			to = min(max((left+g.step+4*g.margin-a[0])/wide, 0), 1)
		}
		y, z := between(a, b, from)[1], between(a, b, to)[1]
		for r, top := g.row(min(y, z)-2*g.margin), g.row(max(y, z)+2*g.margin); r <= top; r++ {
			visit(r*g.wide + c)
		}
	}
}

// buckets sorts items into cells: list[start[c]:start[c+1]] are those of cell c.
func buckets(cells int, each func(put func(cell int, item int32))) (start, list []int32) {
	start = make([]int32, cells+1)
	each(func(cell int, _ int32) { start[cell+1]++ })
	for c := range cells {
		start[c+1] += start[c]
	}
	list = make([]int32, start[cells])
	next := slices.Clone(start)
	each(func(cell int, item int32) {
		list[next[cell]] = item
		next[cell]++
	})
	return start, list
}

func (g *pieceGrid) placePoints(points []Point) {
	g.pointStart, g.pointList = buckets(g.wide*g.high, func(put func(int, int32)) {
		for i, p := range points {
			put(g.row(p[1])*g.wide+g.column(p[0]), int32(i))
		}
	})
}

func (g *pieceGrid) placePieces(points []Point, pieces []piece) {
	g.pieceStart, g.pieceList = buckets(g.wide*g.high, func(put func(int, int32)) {
		for i, p := range pieces {
			g.along(points[p.a], points[p.b], func(cell int) { put(cell, int32(i)) })
		}
	})
}

// pointsNear reports each point in the cells within the margin of a–b, once.
func (g *pieceGrid) pointsNear(a, b Point, report func(v int32)) {
	g.searches++
	g.along(a, b, func(cell int) {
		for _, v := range g.pointList[g.pointStart[cell]:g.pointStart[cell+1]] {
			if g.lastSeen[v] != g.searches {
				g.lastSeen[v] = g.searches
				report(v)
			}
		}
	})
}

// pairs reports pieces that share a cell; a pair may come more than once.
func (g *pieceGrid) pairs(report func(i, j int32)) {
	for c := range g.wide * g.high {
		here := g.pieceList[g.pieceStart[c]:g.pieceStart[c+1]]
		for k, i := range here {
			for _, j := range here[k+1:] {
				report(i, j)
			}
		}
	}
}
