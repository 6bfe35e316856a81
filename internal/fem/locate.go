package fem

import "math"

// onEdge is how far outside an element, in local coordinates, a point still touches it.
const onEdge = 1e-7

// Hit is an element that touches a point, and where in it the point lies.
type Hit struct {
	Element int
	Xi, Eta float64
}

// Locator finds the elements that touch a point. It sorts the elements into square
// bins once.
type Locator struct {
	mesh       *Mesh
	x, y, size float64
	nx, ny     int
	start      []int32
	element    []int32
}

// NewLocator sorts the elements of a mesh.
func NewLocator(m *Mesh) *Locator {
	l := &Locator{mesh: m}
	x1, y1 := math.Inf(-1), math.Inf(-1)
	l.x, l.y = math.Inf(1), math.Inf(1)
	for i := range m.X {
		l.x, l.y = min(l.x, m.X[i]), min(l.y, m.Y[i])
		x1, y1 = max(x1, m.X[i]), max(y1, m.Y[i])
	}
	l.size = math.Sqrt((x1-l.x)*(y1-l.y)/float64(m.Elements()+1)) * 1.5
	if !(l.size > 0) {
		l.size = 1
	}
	l.nx, l.ny = int((x1-l.x)/l.size)+1, int((y1-l.y)/l.size)+1
	l.start = make([]int32, l.nx*l.ny+2)
	l.bins(func(bin, _ int) { l.start[bin+2]++ })
	for i := 2; i < len(l.start); i++ {
		l.start[i] += l.start[i-1]
	}
	l.element = make([]int32, l.start[len(l.start)-1])
	l.bins(func(bin, e int) {
		l.element[l.start[bin+1]] = int32(e)
		l.start[bin+1]++
	})
	return l
}

// bins calls see for every bin that the box around each element meets.
func (l *Locator) bins(see func(bin, e int)) {
	for e := range l.mesh.Elements() {
		x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
		for _, n := range l.mesh.Of(e) {
			x, y := l.mesh.X[n], l.mesh.Y[n]
			x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
		}
		slack := onEdge * (x1 - x0 + y1 - y0)
		i0, j0 := l.bin(x0-slack, y0-slack)
		i1, j1 := l.bin(x1+slack, y1+slack)
		for j := j0; j <= j1; j++ {
			for i := i0; i <= i1; i++ {
				see(j*l.nx+i, e)
			}
		}
	}
}

func (l *Locator) bin(x, y float64) (i, j int) {
	i = min(max(int((x-l.x)/l.size), 0), l.nx-1)
	j = min(max(int((y-l.y)/l.size), 0), l.ny-1)
	return i, j
}

// Find returns the elements that touch a point, lowest first; none outside the mesh.
func (l *Locator) Find(x, y float64) []Hit {
	var hits []Hit
	i, j := l.bin(x, y)
	bin := j*l.nx + i
	var g geometry
	for _, e := range l.element[l.start[bin]:l.start[bin+1]] {
		g.gather(l.mesh, int(e))
		if xi, eta, ok := g.localOf(l.mesh.Shape, x, y); ok && inside(l.mesh.Shape, xi, eta) {
			hits = append(hits, Hit{int(e), xi, eta})
		}
	}
	return hits
}

func inside(s *Shape, xi, eta float64) bool {
	if s.Corners == 3 {
		return xi > -onEdge && eta > -onEdge && xi+eta < 1+onEdge
	}
	return math.Abs(xi) < 1+onEdge && math.Abs(eta) < 1+onEdge
}

// localOf finds the local place of a point by Newton's method.
func (g *geometry) localOf(s *Shape, x, y float64) (xi, eta float64, ok bool) {
	if s.Corners == 3 {
		xi, eta = 1./3, 1./3
	}
	for range 20 {
		det := g.atLocal(s, xi, eta)
		if !(det != 0) {
			return 0, 0, false
		}
		px, py := g.place()
		j := g.jacobian
		rx, ry := x-px, y-py
		stepXi, stepEta := (j[3]*rx-j[2]*ry)/det, (j[0]*ry-j[1]*rx)/det
		xi, eta = xi+stepXi, eta+stepEta
		if math.Abs(stepXi)+math.Abs(stepEta) < 1e-12 {
			return xi, eta, true
		}
		if math.Abs(xi)+math.Abs(eta) > 100 {
			return 0, 0, false
		}
	}
	return xi, eta, math.Abs(xi)+math.Abs(eta) < 3
}
