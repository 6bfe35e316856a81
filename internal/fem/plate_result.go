package fem

// Moment is the bending moment of a plate per length of section, N; positive when
// the underside is in tension.
type Moment struct{ XX, YY, XY float64 }

// Bottom returns the stress of the underside of a plate of given thickness; the top
// has the opposite.
func (m Moment) Bottom(thickness float64) Stress {
	c := 6 / (thickness * thickness)
	return Stress{m.XX * c, m.YY * c, m.XY * c}
}

// Top returns the stress of the upper side.
func (m Moment) Top(thickness float64) Stress {
	s := m.Bottom(thickness)
	return Stress{-s.XX, -s.YY, -s.XY}
}

// PlateEnergy is the work stored in bending and shear and in the ground, J, and the
// share of the area that the ground pushes on.
type PlateEnergy struct{ Plate, Ground, Contact float64 }

// Energy integrates the stored work. Ground is taken as proportional to w where it
// pushes or pulls at all.
func (p *Plate) Energy(u []float64) PlateEnergy {
	var sum PlateEnergy
	w := takeScratch()
	defer w.give()
	g, f := &w.g, &w.f
	whole := 0.0
	var own [plateUnknowns]float64
	for e := range p.Elements() {
		g.gather(p.Mesh, e)
		ue := p.ownOf(e, u, own[:])
		for _, r := range p.Kind.rule {
			area, at := p.fieldAt(g, e, r.xi, r.eta, f)
			area *= r.weight
			layer := p.Law(at)
			k := f.bend(ue, layer.FreeCurvature)
			m := times(&layer.Bending, k)
			sum.Plate += area / 2 * (m[0]*k[0] + m[1]*k[1] + m[2]*k[2])
			if p.Kind.Thick {
				x, y := dot(f.shear[0][:len(ue)], ue), dot(f.shear[1][:len(ue)], ue)
				sum.Plate += area / 2 * layer.Shear * (x*x + y*y)
			}
			whole += area
		}
		if p.Ground != nil {
			p.addGroundEnergy(w, e, ue, &sum)
		}
	}
	sum.Contact /= whole
	return sum
}

// addGroundEnergy adds what the ground under one element stores, and its area where
// it is touched.
func (p *Plate) addGroundEnergy(w *scratch, e int, u []float64, sum *PlateEnergy) {
	rule := p.Kind.rule
	if p.letsGoWithin(w, e, u) {
		rule = p.splitRule()
	}
	for _, r := range rule {
		area, at := p.fieldAt(&w.g, e, r.xi, r.eta, &w.f)
		deflection := dot(w.f.w[:len(u)], u)
		if pressure, stiffness := p.Ground(at, deflection); stiffness > 0 {
			sum.Ground += area * r.weight / 2 * pressure * deflection
			sum.Contact += area * r.weight
		}
	}
}

func (p *Plate) ownOf(e int, u, own []float64) []float64 {
	b := p.Kind.Unknowns
	for i, n := range p.Of(e) {
		copy(own[i*b:i*b+b], u[int(n)*b:])
	}
	return own[:b*p.Mesh.Shape.Nodes]
}

// At returns the deflection and moment at a place of the plan, the mean of the
// elements that touch it, and how many they are: 0 outside the mesh.
func (p *Plate) At(l *Locator, x, y float64, u []float64) (w float64, m Moment, touching int) {
	var g geometry
	var f plateField
	var own [plateUnknowns]float64
	hits := l.Find(x, y)
	share := 1 / float64(max(1, len(hits)))
	for _, hit := range hits {
		g.gather(p.Mesh, hit.Element)
		ue := p.ownOf(hit.Element, u, own[:])
		_, at := p.fieldAt(&g, hit.Element, hit.Xi, hit.Eta, &f)
		layer := p.Law(at)
		v := times(&layer.Bending, f.bend(ue, layer.FreeCurvature))
		// Curvature is positive sagging upwards here, moments by the underside.
		m.XX -= v[0] * share
		m.YY -= v[1] * share
		m.XY -= v[2] * share
		w += dot(f.w[:len(ue)], ue) * share
	}
	return w, m, len(hits)
}
