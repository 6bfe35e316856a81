package fem

import "math"

// PatchForce returns the forces on all unknowns of a uniform pressure, positive
// down, on a convex polygon given by its corners turning left: a wheel, a post. Each
// element takes exactly what lies on it. covered is the area of the patch on the
// plate, for the caller to compare with the whole.
func (p *Plate) PatchForce(corners [][2]float64, pressure float64) (force []float64, covered float64) {
	b := p.Kind.Unknowns
	force = make([]float64, p.Nodes()*b)
	var g geometry
	var f plateField
	for e := range p.Elements() {
		g.gather(p.Mesh, e)
		piece := clip(g.outline(p.Mesh.Shape), corners)
		for k := 2; k < len(piece); k++ {
			covered += eachPoint(piece[0], piece[k-1], piece[k], func(x, y, area float64) {
				xi, eta, _ := g.localOf(p.Mesh.Shape, x, y)
				p.fieldAt(&g, e, xi, eta, &f)
				for i, n := range p.Of(e) {
					for u := range b {
						force[int(n)*b+u] += pressure * area * f.w[i*b+u]
					}
				}
			})
		}
	}
	return force, covered
}

// PointForce returns the forces on all unknowns of a single force, down, shared
// between the elements that touch the place; nil outside the plate.
func (p *Plate) PointForce(l *Locator, x, y, newtons float64) []float64 {
	hits := l.Find(x, y)
	if len(hits) == 0 {
		return nil
	}
	b := p.Kind.Unknowns
	force := make([]float64, p.Nodes()*b)
	var g geometry
	var f plateField
	for _, hit := range hits {
		g.gather(p.Mesh, hit.Element)
		p.fieldAt(&g, hit.Element, hit.Xi, hit.Eta, &f)
		for i, n := range p.Of(hit.Element) {
			for u := range b {
				force[int(n)*b+u] += newtons / float64(len(hits)) * f.w[i*b+u]
			}
		}
	}
	return force
}

func (g *geometry) outline(s *Shape) [][2]float64 {
	out := make([][2]float64, s.Corners)
	for i := range out {
		out[i] = [2]float64{g.x[i], g.y[i]}
	}
	return out
}

// clip cuts a polygon down to what lies left of every side of a convex one.
//
// Source: Sutherland and Hodgman, Communications of the ACM 17 (1974).
func clip(polygon, by [][2]float64) [][2]float64 {
	for i, a := range by {
		b := by[(i+1)%len(by)]
		side := func(p [2]float64) float64 { return (b[0]-a[0])*(p[1]-a[1]) - (b[1]-a[1])*(p[0]-a[0]) }
		var kept [][2]float64
		for k, p := range polygon {
			q := polygon[(k+1)%len(polygon)]
			sp, sq := side(p), side(q)
			if sp >= 0 {
				kept = append(kept, p)
			}
			if sp > 0 && sq < 0 || sp < 0 && sq > 0 {
				t := sp / (sp - sq)
				kept = append(kept, [2]float64{p[0] + t*(q[0]-p[0]), p[1] + t*(q[1]-p[1])})
			}
		}
		polygon = kept
	}
	return polygon
}

// eachPoint calls see at the points of a rule on a triangle that is exact for degree
// 6, with the area each stands for, and returns the whole.
func eachPoint(a, b, c [2]float64, see func(x, y, area float64)) float64 {
	double := math.Abs((b[0]-a[0])*(c[1]-a[1]) - (b[1]-a[1])*(c[0]-a[0]))
	if double == 0 {
		return 0
	}
	for _, p := range gauss4 {
		s := (1 + p.at) / 2 // from a towards the side bc
		for _, q := range gauss4 {
			t := (1 + q.at) / 2
			x := a[0] + s*((1-t)*(b[0]-a[0])+t*(c[0]-a[0]))
			y := a[1] + s*((1-t)*(b[1]-a[1])+t*(c[1]-a[1]))
			see(x, y, double*s*p.weight*q.weight/4)
		}
	}
	return double / 2
}
