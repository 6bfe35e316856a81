package fem

// Shape is a kind of element in the plane: its nodes, how a value between them
// follows from theirs, and the points where integrals are taken.
//
// Corners come first, turning left, then mid-side nodes: the one between corners 1
// and 2, and so on. Local coordinates run from −1 to 1 in quadrilaterals and are the
// second and third area coordinates in triangles.
type Shape struct {
	Name    string
	Nodes   int
	Corners int

	values func(xi, eta float64, n, dXi, dEta []float64)
	rule   []rulePoint
	// Values and derivatives at the points of the rule.
	n, dXi, dEta [][]float64
}

// rulePoint is a point of an integration rule; weights add up to the area of the
// local element (4 or ½).
type rulePoint struct{ xi, eta, weight float64 }

// maxNodes is the most nodes an element has.
const maxNodes = 25

// The shapes. T3 and T6 are triangles with three and six nodes, Q4 and Q8
// quadrilaterals with four and eight, Q25 one of the fourth degree with a grid of
// five by five nodes for answers of many digits. Integrals are exact for the usual stiffness and
// spring terms when sides are straight and quadrilaterals are parallelograms.
var (
	T3 = newShape("t3", 3, 3, valuesT3, triangleRule3)
	T6 = newShape("t6", 6, 3, valuesT6, triangleRule6)
	Q4 = newShape("q4", 4, 4, valuesQ4, squareRule(gauss2))
	Q8 = newShape("q8", 8, 4, valuesQ8, squareRule(gauss3))

	Q25 = newShape("q25", 25, 4, valuesQ25, squareRule(gauss5))
)

func newShape(name string, nodes, corners int, values func(xi, eta float64, n, dXi, dEta []float64), rule []rulePoint) *Shape {
	s := &Shape{Name: name, Nodes: nodes, Corners: corners, values: values, rule: rule}
	for _, p := range rule {
		n, dXi, dEta := make([]float64, nodes), make([]float64, nodes), make([]float64, nodes)
		values(p.xi, p.eta, n, dXi, dEta)
		s.n, s.dXi, s.dEta = append(s.n, n), append(s.dXi, dXi), append(s.dEta, dEta)
	}
	return s
}

// Points returns how many integration points an element has.
func (s *Shape) Points() int { return len(s.rule) }

func valuesT3(xi, eta float64, n, dXi, dEta []float64) {
	n[0], n[1], n[2] = 1-xi-eta, xi, eta
	dXi[0], dXi[1], dXi[2] = -1, 1, 0
	dEta[0], dEta[1], dEta[2] = -1, 0, 1
}

func valuesT6(xi, eta float64, n, dXi, dEta []float64) {
	l := [3]float64{1 - xi - eta, xi, eta}
	slope := [3][2]float64{{-1, -1}, {1, 0}, {0, 1}}
	for i := range 3 {
		j := (i + 1) % 3
		n[i] = l[i] * (2*l[i] - 1)
		dXi[i] = (4*l[i] - 1) * slope[i][0]
		dEta[i] = (4*l[i] - 1) * slope[i][1]
		n[3+i] = 4 * l[i] * l[j]
		dXi[3+i] = 4 * (slope[i][0]*l[j] + l[i]*slope[j][0])
		dEta[3+i] = 4 * (slope[i][1]*l[j] + l[i]*slope[j][1])
	}
}

// squareCorners are the local places of the corners of a quadrilateral.
var squareCorners = [4][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}

func valuesQ4(xi, eta float64, n, dXi, dEta []float64) {
	for i, c := range squareCorners {
		a, b := 1+c[0]*xi, 1+c[1]*eta
		n[i] = a * b / 4
		dXi[i] = c[0] * b / 4
		dEta[i] = a * c[1] / 4
	}
}

func valuesQ8(xi, eta float64, n, dXi, dEta []float64) {
	for i, c := range squareCorners {
		a, b := 1+c[0]*xi, 1+c[1]*eta
		n[i] = a * b * (c[0]*xi + c[1]*eta - 1) / 4
		dXi[i] = c[0] * b * (2*c[0]*xi + c[1]*eta) / 4
		dEta[i] = c[1] * a * (c[0]*xi + 2*c[1]*eta) / 4
	}
	for i := range 2 {
		s := float64(2*i - 1) // side at eta or xi = −1, then 1
		m := 4 + 2*i          // along xi: nodes 4 and 6
		n[m] = (1 - xi*xi) * (1 + s*eta) / 2
		dXi[m] = -xi * (1 + s*eta)
		dEta[m] = (1 - xi*xi) * s / 2
		m = 7 - 2*i // along eta: node 7 at xi = −1, 5 at xi = 1
		n[m] = (1 + s*xi) * (1 - eta*eta) / 2
		dXi[m] = s * (1 - eta*eta) / 2
		dEta[m] = -eta * (1 + s*xi)
	}
}

// quarticPlaces are the nodes of Q25 in quarters from the lower left corner: the
// corners, then the rest row by row.
var quarticPlaces = func() [][2]int {
	places := [][2]int{{0, 0}, {4, 0}, {4, 4}, {0, 4}}
	for j := range 5 {
		for i := range 5 {
			if i%4 != 0 || j%4 != 0 {
				places = append(places, [2]int{i, j})
			}
		}
	}
	return places
}()

func valuesQ25(xi, eta float64, n, dXi, dEta []float64) {
	a, da := quartics(xi)
	b, db := quartics(eta)
	for k, p := range quarticPlaces {
		n[k] = a[p[0]] * b[p[1]]
		dXi[k] = da[p[0]] * b[p[1]]
		dEta[k] = a[p[0]] * db[p[1]]
	}
}

// quartics returns the polynomials of degree four that are 1 at one of five equal
// places on −1…1 and 0 at the others, and their derivatives.
func quartics(at float64) (value, slope [5]float64) {
	for i := range 5 {
		value[i] = 1
		for j := range 5 {
			if j == i {
				continue
			}
			gap := float64(i-j) / 2
			from := at - (float64(j)/2 - 1)
			slope[i] = (slope[i]*from + value[i]) / gap
			value[i] *= from / gap
		}
	}
	return value, slope
}
