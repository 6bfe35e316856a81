package fem

import (
	"math"

	"slabwright/internal/sparse"
)

// BedLaw gives the traction along the plane that answers a displacement at a point,
// N/m², and its growth xx, xy, yy, N/m³. Point counts the integration points of the
// whole bed.
type BedLaw func(point int, at Place, x, y float64) (tx, ty float64, growth [3]float64)

// Bed is springs along the plane, under a sheet, whose law need not be linear. Two
// unknowns a node.
type Bed struct {
	*Mesh
	Law      BedLaw
	Accepted func(point int, x, y float64) // told the displacement at every point once a state is found
	Title    string                        // "bed" if empty
}

func (b *Bed) Name() string                      { return orElse(b.Title, "bed") }
func (b *Bed) Connectivity() sparse.Connectivity { return b.Mesh.Connectivity() }

// Points returns how many integration points there are.
func (b *Bed) Points() int { return b.Elements() * b.Mesh.Shape.Points() }

// Element adds up ∫ Nᵀ·traction.
func (b *Bed) Element(e int, u, ke, fe []float64) {
	w := takeScratch()
	defer w.give()
	g := &w.g
	g.gather(b.Mesh, e)
	points := b.Mesh.Shape.Points()
	for p := range points {
		area, at, x, y := b.pointAt(g, e, p, u)
		tx, ty, k := b.Law(e*points+p, at, x, y)
		for i := range k {
			k[i] *= area
		}
		g.addBedTraction(area*tx, area*ty, k, ke, fe)
	}
}

// addBedTraction adds Nᵀ·traction at the last point and its growth, both times the area.
func (g *geometry) addBedTraction(tx, ty float64, k [3]float64, ke, fe []float64) {
	width := 2 * len(g.n)
	for i, ni := range g.n {
		fe[2*i] += ni * tx
		fe[2*i+1] += ni * ty
		xx, xy, yy := ni*k[0], ni*k[1], ni*k[2]
		row, next := ke[2*i*width:2*i*width+2*i+2], ke[(2*i+1)*width:(2*i+1)*width+2*i+2]
		for j, nj := range g.n[:i+1] {
			row[2*j] += xx * nj
			row[2*j+1] += xy * nj
			next[2*j] += xy * nj
			next[2*j+1] += yy * nj
		}
	}
}

// pointAt returns the area that integration point p stands for, its place and the
// displacement there.
func (b *Bed) pointAt(g *geometry, e, p int, u []float64) (area float64, at Place, x, y float64) {
	area = g.at(b.Mesh.Shape, p)
	at = Place{Element: e}
	at.X, at.Y = g.place()
	for i, n := range g.n {
		x += n * u[2*i]
		y += n * u[2*i+1]
	}
	return area, at, x, y
}

// Accept tells Accepted the displacement at every point.
func (b *Bed) Accept(u []float64) {
	if b.Accepted == nil {
		return
	}
	var g geometry
	var own [2 * maxNodes]float64
	for e := range b.Elements() {
		g.gather(b.Mesh, e)
		for i, n := range b.Of(e) {
			own[2*i], own[2*i+1] = u[2*n], u[2*n+1]
		}
		points := b.Mesh.Shape.Points()
		for p := range points {
			_, _, x, y := b.pointAt(&g, e, p, own[:])
			b.Accepted(e*points+p, x, y)
		}
	}
}

// Slipping is a bed that follows with a stiffness, N/m³, until the traction reaches a
// limit, N/m², and then slides at the limit in the direction of the displacement
// since the last slide. It remembers how far each point has slid.
type Slipping struct {
	Stiffness float64
	Limit     func(Place) float64
	SlidX     []float64 // m, by point
	SlidY     []float64
	limits    []float64 // of the last look, for Accepted
}

// NewSlipping returns a law for a bed of so many points.
func NewSlipping(points int, stiffness float64, limit func(Place) float64) *Slipping {
	if !(stiffness > 0) {
		panic("fem: a bed needs a stiffness above 0")
	}
	return &Slipping{stiffness, limit, make([]float64, points), make([]float64, points), make([]float64, points)}
}

// Law is the law to hand to [Bed]. Sliding, its growth is that of the traction's
// direction; along the slide a thousandth of the stiffness is kept so that a slab
// that slides everywhere still has a place.
func (s *Slipping) Law(point int, at Place, x, y float64) (tx, ty float64, growth [3]float64) {
	limit := s.Limit(at)
	s.limits[point] = limit
	ex, ey := x-s.SlidX[point], y-s.SlidY[point]
	far := math.Hypot(ex, ey)
	if s.Stiffness*far <= limit {
		return s.Stiffness * ex, s.Stiffness * ey, [3]float64{s.Stiffness, 0, s.Stiffness}
	}
	nx, ny := ex/far, ey/far
	k := limit / far
	const kept = 1e-3
	rest := kept * s.Stiffness
	return limit * nx, limit * ny, [3]float64{k*ny*ny + rest*nx*nx, (rest - k) * nx * ny, k*nx*nx + rest*ny*ny}
}

// Accepted remembers the slide; hand it to [Bed].
func (s *Slipping) Accepted(point int, x, y float64) {
	ex, ey := x-s.SlidX[point], y-s.SlidY[point]
	if far := math.Hypot(ex, ey); s.Stiffness*far > s.limits[point] && far > 0 {
		part := 1 - s.limits[point]/(s.Stiffness*far)
		s.SlidX[point] += part * ex
		s.SlidY[point] += part * ey
	}
}
