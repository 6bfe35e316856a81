package fem

import (
	"fmt"
	"math"

	"slabwright/internal/sparse"
)

// PlateLayer is what a plate is at a place.
type PlateLayer struct {
	// Bending is moment by curvature: xx/xx, xx/yy, yy/yy, xx/xy, yy/xy, xy/xy, the
	// curvature xy being twice w,xy; N·m.
	Bending [6]float64
	Shear   float64 // shear force by shear strain, N/m; thick elements only
	// FreeCurvature is w,xx, w,yy and 2w,xy of the plate if nothing held it.
	FreeCurvature [3]float64
	Load          float64 // down, N/m²
}

// IsotropicPlate returns the bending stiffness of a plate alike in all directions,
// and its shear stiffness with the factor 5/6.
//
// Sources: Timoshenko and Woinowsky-Krieger, Theory of plates and shells, art. 21;
// Reissner, Journal of Applied Mechanics 12 (1945) for 5/6.
func IsotropicPlate(modulus, poisson, thickness float64) (bending [6]float64, shear float64) {
	bending = Isotropic(modulus, poisson)
	for i := range bending {
		bending[i] *= thickness * thickness * thickness / 12
	}
	return bending, 5. / 6 * modulus / (2 * (1 + poisson)) * thickness
}

// Ground gives the pressure that answers a deflection w at a place, and how fast it
// grows with w.
type Ground func(at Place, w float64) (pressure, stiffness float64)

// TwoWay is ground that pulls as well as it pushes, stiffness N/m³.
func TwoWay(stiffness float64) Ground {
	return func(_ Place, w float64) (float64, float64) { return stiffness * w, stiffness }
}

// PushOnly is ground that lets a plate lift off.
func PushOnly(stiffness float64) Ground {
	return func(_ Place, w float64) (float64, float64) {
		if w < 0 {
			return 0, 0
		}
		return stiffness * w, stiffness
	}
}

// Plate is a part that bends. Ground is asked at the integration points.
type Plate struct {
	*Mesh
	Kind   *PlateShape
	Law    func(Place) PlateLayer
	Ground Ground // nil for none
	// LinearGround says that Ground's stiffness never changes.
	LinearGround bool
	// GroundSplit, if above 1, is into how many pieces each way an element is split to
	// integrate the ground where it lets go along a line through the element. Without
	// it the line moves from one integration point to the next: a deflection beyond it
	// is then right to about a thousandth only, however fine the element's own shape.
	GroundSplit int
	Title       string // "plate" if empty
}

func (p *Plate) Name() string                      { return orElse(p.Title, "plate") }
func (p *Plate) Linear() bool                      { return p.Ground == nil || p.LinearGround }
func (p *Plate) Connectivity() sparse.Connectivity { return p.Mesh.Connectivity() }

// Check refuses a mesh that the kind of element cannot use.
func (p *Plate) Check() error {
	if p.Mesh.Shape != p.Kind.Mesh {
		return fmt.Errorf("plate elements %s need a mesh of %s, not %s", p.Kind.Name, p.Kind.Mesh.Name, p.Mesh.Shape.Name)
	}
	if err := p.Mesh.Check(); err != nil || !p.Kind.Upright {
		return err
	}
	for e := range p.Elements() {
		var g geometry
		g.gather(p.Mesh, e)
		size := math.Abs(g.x[1]-g.x[0]) + math.Abs(g.y[2]-g.y[1])
		off := math.Abs(g.y[1]-g.y[0]) + math.Abs(g.x[2]-g.x[1]) + math.Abs(g.y[3]-g.y[2]) + math.Abs(g.x[0]-g.x[3])
		if off > 1e-9*size || g.x[1] <= g.x[0] {
			x, y := g.centre(p.Mesh.Shape)
			return fmt.Errorf("plate elements %s must be rectangles along the axes, first corner lower left; element %d near x %.6g, y %.6g is not", p.Kind.Name, e, x, y)
		}
	}
	return nil
}

// Element adds up ∫ κᵀ·M + γᵀ·Q + Nᵀ(ground − load) and its derivative.
func (p *Plate) Element(e int, u, ke, fe []float64) {
	w := takeScratch()
	defer w.give()
	g, f := &w.g, &w.f
	g.gather(p.Mesh, e)
	width := p.Kind.Unknowns * p.Mesh.Shape.Nodes
	split := p.letsGoWithin(w, e, u)
	if split {
		p.addSplitGround(w, e, u, ke, fe)
	}
	for _, r := range p.Kind.rule {
		area, at := p.fieldAt(g, e, r.xi, r.eta, f)
		area *= r.weight
		layer := p.Law(at)
		moment := times(&layer.Bending, f.bend(u[:width], layer.FreeCurvature))
		pressure, stiffness := -layer.Load, 0.0
		if p.Ground != nil && !split {
			answer, growth := p.Ground(at, dot(f.w[:width], u))
			pressure, stiffness = pressure+answer, growth
		}
		q := [2]float64{}
		if p.Kind.Thick {
			q[0], q[1] = layer.Shear*dot(f.shear[0][:width], u), layer.Shear*dot(f.shear[1][:width], u)
		}
		for i := range width {
			k0, k1, k2 := f.curvature[0][i], f.curvature[1][i], f.curvature[2][i]
			fe[i] += area * (k0*moment[0] + k1*moment[1] + k2*moment[2] + f.w[i]*pressure)
			m := times(&layer.Bending, [3]float64{k0 * area, k1 * area, k2 * area})
			push := area * stiffness * f.w[i]
			row := ke[i*width : i*width+i+1]
			for j := range row {
				row[j] += m[0]*f.curvature[0][j] + m[1]*f.curvature[1][j] + m[2]*f.curvature[2][j] + push*f.w[j]
			}
			if p.Kind.Thick {
				fe[i] += area * (f.shear[0][i]*q[0] + f.shear[1][i]*q[1])
				s0, s1 := area*layer.Shear*f.shear[0][i], area*layer.Shear*f.shear[1][i]
				for j := range row {
					row[j] += s0*f.shear[0][j] + s1*f.shear[1][j]
				}
			}
		}
	}
}

// fieldAt fills in what each unknown does at a local place and returns the area per
// local area and the place.
func (p *Plate) fieldAt(g *geometry, e int, xi, eta float64, f *plateField) (area float64, at Place) {
	area = g.atLocal(p.Mesh.Shape, xi, eta)
	at = Place{Element: e}
	at.X, at.Y = g.place()
	p.Kind.fill(g, xi, eta, f)
	return area, at
}

// bend returns the curvature less the free one.
func (f *plateField) bend(u []float64, free [3]float64) [3]float64 {
	n := len(u)
	return [3]float64{dot(f.curvature[0][:n], u) - free[0], dot(f.curvature[1][:n], u) - free[1], dot(f.curvature[2][:n], u) - free[2]}
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}
