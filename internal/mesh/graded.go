package mesh

import (
	"fmt"
	"math"
)

// Source is a place where triangles must be small: an inside corner, a crack
// tip.
type Source struct {
	At   Point
	Size float64
}

// Graded grows the size from sources up to a largest one. Build it with [Grade].
type Graded struct {
	largest, growth float64
	sources         []Source
	// A raster of the part where some source counts, and for each cell the sources
	// that can be the smallest there.
	low         Point
	step        float64
	wide, high  int
	start, list []int32
}

// Grade lets each triangle be growth times as large as its neighbour nearer to a
// source: n triangles of h·growth^k reach h·(growth^n − 1)/(growth − 1), so the
// size at distance d is h + (growth − 1)·d. Growth lies above 1; 1.1 to 1.5 keep
// the triangles even.
func Grade(largest, growth float64, sources ...Source) *Graded {
	g := &Graded{largest: largest, growth: growth}
	for _, s := range sources {
		if !(s.Size >= largest) {
			g.sources = append(g.sources, s)
		}
	}
	if len(g.sources) > 0 && g.check() == nil {
		g.makeRaster()
	}
	return g
}

// Along puts sources on a path, no farther apart than every.
func Along(path []Point, size, every float64) []Source {
	var out []Source
	for i := 1; i < len(path); i++ {
		parts := max(math.Ceil(distance(path[i-1], path[i])/every), 1)
		for k := range int(parts) {
			out = append(out, Source{between(path[i-1], path[i], float64(k)/parts), size})
		}
	}
	if len(path) > 0 {
		out = append(out, Source{path[len(path)-1], size})
	}
	return out
}

func (g *Graded) check() error {
	if err := checkSize("The largest size", g.largest); err != nil {
		return err
	}
	for i, s := range g.sources {
		if err := checkSize(fmt.Sprintf("The size at source %d (x %.6g, y %.6g)", i, s.At[0], s.At[1]), s.Size); err != nil {
			return err
		}
		if !(math.Abs(s.At[0]) < largestCoordinate && math.Abs(s.At[1]) < largestCoordinate) {
			return refuse(NotFinite, s.At, "Give both coordinates as plain numbers.", "Source %d is not at a usable place", i)
		}
	}
	if !(g.growth > 1 && g.growth <= 10) {
		return refuseWhole(BadOption, "Give a value in that range.", "The growth is %g; allowed are above 1 to 10", g.growth)
	}
	return nil
}

// Largest is the size far from all sources.
func (g *Graded) Largest() float64 { return g.largest }

// At is the size at p.
func (g *Graded) At(p Point) float64 {
	h := g.largest
	if len(g.sources) == 0 {
		return h
	}
	x, y := (p[0]-g.low[0])/g.step, (p[1]-g.low[1])/g.step
	if !(x >= 0 && y >= 0 && x < float64(g.wide) && y < float64(g.high)) {
		return h
	}
	cell := int(y)*g.wide + int(x)
	for _, i := range g.list[g.start[cell]:g.start[cell+1]] {
		h = min(h, g.from(i, p))
	}
	return h
}

func (g *Graded) from(i int32, p Point) float64 {
	s := &g.sources[i]
	return s.Size + (g.growth-1)*math.Sqrt(squaredDistance(s.At, p))
}

// makeRaster covers the places nearer to a source than where it reaches the
// largest size.
func (g *Graded) makeRaster() {
	low, high := Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, s := range g.sources {
		reach := (g.largest - s.Size) / (g.growth - 1)
		low = Point{min(low[0], s.At[0]-reach), min(low[1], s.At[1]-reach)}
		high = Point{max(high[0], s.At[0]+reach), max(high[1], s.At[1]+reach)}
	}
	g.low = low
	cells := float64(min(16*len(g.sources), 1<<14))
	g.step = max(math.Sqrt((high[0]-low[0])*(high[1]-low[1])/cells), max(high[0]-low[0], high[1]-low[1])/1024)
	g.wide, g.high = int((high[0]-low[0])/g.step)+1, int((high[1]-low[1])/g.step)+1
	chosen := make([][]int32, g.wide*g.high)
	for cell := range chosen {
		chosen[cell] = g.choose(cell)
	}
	g.start, g.list = buckets(len(chosen), func(put func(int, int32)) {
		for cell, list := range chosen {
			for _, i := range list {
				put(cell, i)
			}
		}
	})
}

// choose lists the sources that can give the smallest size somewhere in a cell:
// those that at its middle are within twice what the size can change from there
// to a corner.
func (g *Graded) choose(cell int) []int32 {
	middle := Point{g.low[0] + (float64(cell%g.wide)+0.5)*g.step, g.low[1] + (float64(cell/g.wide)+0.5)*g.step}
	change := (g.growth - 1) * g.step * math.Sqrt2 / 2 * (1 + 1e-9)
	smallest := g.largest + change
	for i := range g.sources {
		smallest = min(smallest, g.from(int32(i), middle)+change)
	}
	var list []int32
	for i := range g.sources {
		if g.from(int32(i), middle)-change <= smallest {
			list = append(list, int32(i))
		}
	}
	return list
}
