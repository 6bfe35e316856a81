package fem

import "sync"

// letsGoWithin says whether the ground answers at some of an element's points and
// corners and not at others, so that it must be split. w holds the geometry.
func (p *Plate) letsGoWithin(w *scratch, e int, u []float64) bool {
	if p.GroundSplit <= 1 || p.Ground == nil || p.LinearGround {
		return false
	}
	answers, silent := false, false
	look := func(at Place, deflection float64) {
		_, stiffness := p.Ground(at, deflection)
		answers, silent = answers || stiffness > 0, silent || !(stiffness > 0)
	}
	for i := range p.Mesh.Shape.Nodes {
		look(Place{Element: e, X: w.g.x[i], Y: w.g.y[i]}, u[i*p.Kind.Unknowns])
	}
	if answers && silent {
		return true
	}
	width := p.Kind.Unknowns * p.Mesh.Shape.Nodes
	for _, r := range p.Kind.rule {
		_, at := p.fieldAt(&w.g, e, r.xi, r.eta, &w.f)
		look(at, dot(w.f.w[:width], u))
	}
	return answers && silent
}

// addSplitGround adds ∫ Nᵀ·ground and its derivative piece by piece.
func (p *Plate) addSplitGround(w *scratch, e int, u, ke, fe []float64) {
	width := p.Kind.Unknowns * p.Mesh.Shape.Nodes
	for _, r := range p.splitRule() {
		area, at := p.fieldAt(&w.g, e, r.xi, r.eta, &w.f)
		area *= r.weight
		n := w.f.w[:width]
		pressure, stiffness := p.Ground(at, dot(n, u))
		if pressure == 0 && stiffness == 0 {
			continue
		}
		for i, v := range n {
			fe[i] += area * v * pressure
			push := area * stiffness * v
			row := ke[i*width : i*width+i+1]
			for j := range row {
				row[j] += push * n[j]
			}
		}
	}
}

// splitKey names a rule of pieces.
type splitKey struct {
	kind   *PlateShape
	pieces int
}

var splitRules sync.Map // splitKey to []rulePoint

// splitRule returns the rule of the element repeated on every piece.
func (p *Plate) splitRule() []rulePoint {
	key := splitKey{p.Kind, p.GroundSplit}
	if rule, ok := splitRules.Load(key); ok {
		return rule.([]rulePoint)
	}
	rule := splitSquare(p.Kind.rule, p.GroundSplit)
	if p.Mesh.Shape.Corners == 3 {
		rule = splitTriangle(p.Kind.rule, p.GroundSplit)
	}
	splitRules.Store(key, rule)
	return rule
}

func splitSquare(rule []rulePoint, n int) (all []rulePoint) {
	h := 1 / float64(n)
	for j := range n {
		for i := range n {
			x, y := float64(2*i+1)*h-1, float64(2*j+1)*h-1
			for _, r := range rule {
				all = append(all, rulePoint{x + h*r.xi, y + h*r.eta, h * h * r.weight})
			}
		}
	}
	return all
}

// splitTriangle cuts along lines parallel to the sides; every other piece is turned.
func splitTriangle(rule []rulePoint, n int) (all []rulePoint) {
	h := 1 / float64(n)
	for j := range n {
		for i := range n - j {
			x, y := float64(i)*h, float64(j)*h
			for _, r := range rule {
				all = append(all, rulePoint{x + h*r.xi, y + h*r.eta, h * h * r.weight})
				if i+j < n-1 {
					all = append(all, rulePoint{x + h*(1-r.xi), y + h*(1-r.eta), h * h * r.weight})
				}
			}
		}
	}
	return all
}
