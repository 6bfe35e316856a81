package fem

import "slabwright/internal/sparse"

// Place is a point of an element where a law is asked.
type Place struct {
	Element int
	X, Y    float64
}

// Layer is what a sheet in plane stress is at a place. Two unknowns a node: the
// displacements along x and y.
type Layer struct {
	Thickness float64    // m
	Stiffness [6]float64 // stress by strain: xx/xx, xx/yy, yy/yy, xx/xy, yy/xy, xy/xy; Pa
	// FreeStrain is what the sheet would shorten or lengthen by if nothing held it:
	// xx, yy and twice xy.
	FreeStrain [3]float64
	Bed        float64    // springs along the plane over the area, both directions; N/m³
	Push       [2]float64 // load along the plane over the area; N/m²
}

// Isotropic returns the stiffness in plane stress of a material alike in all
// directions: stress xx, yy, xy by strain xx, yy and twice xy.
//
// Source: Timoshenko and Goodier, Theory of elasticity, art. 11.
func Isotropic(modulus, poisson float64) [6]float64 {
	d := modulus / (1 - poisson*poisson)
	return [6]float64{d, poisson * d, d, 0, 0, d * (1 - poisson) / 2}
}

// Sheet is a part in plane stress. What it is made of comes from Law.
type Sheet struct {
	*Mesh
	Law   func(Place) Layer
	Title string // "sheet" if empty
}

func (s *Sheet) Name() string                      { return orElse(s.Title, "sheet") }
func (s *Sheet) Linear() bool                      { return true }
func (s *Sheet) Connectivity() sparse.Connectivity { return s.Mesh.Connectivity() }

func orElse(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

// Element adds up ∫ t·Bᵀ·D·B + bed·NᵀN and ∫ t·Bᵀ·D·(ε−ε0) + bed·Nᵀu − Nᵀ·push.
func (s *Sheet) Element(e int, u, ke, fe []float64) {
	w := takeScratch()
	defer w.give()
	g := &w.g
	g.gather(s.Mesh, e)
	nodes := s.Shape.Nodes
	width := 2 * nodes
	for p := range s.Shape.rule {
		area := g.at(s.Shape, p)
		at := Place{Element: e}
		at.X, at.Y = g.place()
		layer := s.Law(at)
		d := layer.Stiffness
		for i := range d {
			d[i] *= layer.Thickness * area
		}
		bed := layer.Bed * area
		force := times(&d, g.strain(nodes, u, layer.FreeStrain))
		for i, ni := range g.n {
			x, y := g.dx[i], g.dy[i]
			// Stress in the element by displacement of node i along x and y.
			x0, x1, x2 := d[0]*x+d[3]*y, d[1]*x+d[4]*y, d[3]*x+d[5]*y
			y0, y1, y2 := d[1]*y+d[3]*x, d[2]*y+d[4]*x, d[4]*y+d[5]*x
			spring := bed * ni
			row, next := ke[2*i*width:2*i*width+2*i+2], ke[(2*i+1)*width:(2*i+1)*width+2*i+2]
			for j, nj := range g.n[:i+1] {
				xj, yj := g.dx[j], g.dy[j]
				row[2*j] += x0*xj + x2*yj + spring*nj
				row[2*j+1] += x1*yj + x2*xj
				next[2*j] += y0*xj + y2*yj
				next[2*j+1] += y1*yj + y2*xj + spring*nj
			}
			fe[2*i] += x*force[0] + y*force[2] - layer.Push[0]*area*ni
			fe[2*i+1] += y*force[1] + x*force[2] - layer.Push[1]*area*ni
		}
		if bed != 0 {
			g.addBed(bed, u, fe)
		}
	}
}

// addBed adds the force of springs along the plane.
func (g *geometry) addBed(bed float64, u, fe []float64) {
	var x, y float64
	for i, n := range g.n {
		x += n * u[2*i]
		y += n * u[2*i+1]
	}
	for i, n := range g.n {
		fe[2*i] += bed * n * x
		fe[2*i+1] += bed * n * y
	}
}

// strain returns strain xx, yy and twice xy at the last point, less the free one.
func (g *geometry) strain(nodes int, u []float64, free [3]float64) [3]float64 {
	e := [3]float64{-free[0], -free[1], -free[2]}
	for i := range nodes {
		x, y := g.dx[i], g.dy[i]
		e[0] += x * u[2*i]
		e[1] += y * u[2*i+1]
		e[2] += y*u[2*i] + x*u[2*i+1]
	}
	return e
}

// times multiplies a symmetric 3 by 3 matrix, kept as in [Layer], with a vector.
func times(d *[6]float64, e [3]float64) [3]float64 {
	return [3]float64{
		d[0]*e[0] + d[1]*e[1] + d[3]*e[2],
		d[1]*e[0] + d[2]*e[1] + d[4]*e[2],
		d[3]*e[0] + d[4]*e[1] + d[5]*e[2],
	}
}
