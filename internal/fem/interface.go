package fem

import (
	"math"

	"slabwright/internal/sparse"
)

// Traction is what an interface answers: stress across (tension positive) and along
// it, N/m², and how they grow with the gap: across/across, across/along, along/along,
// N/m³.
type Traction struct {
	Across, Along float64
	Growth        [3]float64
}

// Law gives the traction at a point of an interface whose sides have moved apart by
// gap, across (opening positive) and along, m. Point counts the integration points of
// the whole interface, so that a law can keep what each went through.
type Law func(point int, at Place, across, along float64) Traction

// Interface is a line without width between two rows of nodes at the same places:
// a joint, a crack, an edge against something else. Each element joins nodes a and b
// of the first side to c and d of the second, c beside a, d beside b. Seen from a to
// b the second side is to the left. Two unknowns a node.
type Interface struct {
	X, Y      []float64 // places of the nodes
	Node      []int32   // a, b, c, d of each element
	Thickness float64   // of the sheet, m
	Law       Law
	// Linear says that Law's growth never changes.
	LinearLaw bool
	// Accepted, if not nil, is told the gap at every point once a state is found, so
	// that a law can remember it.
	Accepted func(point int, across, along float64)
	Title    string // "interface" if empty
}

// interfacePoints are per element. The ends themselves are taken: a stiff law
// between them would make traction waver.
const interfacePoints = 2

func (f *Interface) Name() string { return orElse(f.Title, "interface") }
func (f *Interface) Linear() bool { return f.LinearLaw }
func (f *Interface) Connectivity() sparse.Connectivity {
	return sparse.Uniform(4, f.Node)
}

// Points returns how many integration points there are: two per element, at its ends.
func (f *Interface) Points() int { return len(f.Node) / 4 * interfacePoints }

// line is one element of an interface.
type line struct {
	length  float64
	tangent [2]float64
	normal  [2]float64
	x, y    [2]float64
}

func (f *Interface) line(e int) (l line) {
	a, b := f.Node[4*e], f.Node[4*e+1]
	l.x, l.y = [2]float64{f.X[a], f.X[b]}, [2]float64{f.Y[a], f.Y[b]}
	dx, dy := l.x[1]-l.x[0], l.y[1]-l.y[0]
	l.length = math.Hypot(dx, dy)
	l.tangent = [2]float64{dx / l.length, dy / l.length}
	l.normal = [2]float64{-l.tangent[1], l.tangent[0]}
	return l
}

// gap returns how far the second side has moved from the first at end p.
func (l *line) gap(p int, u []float64) (across, along float64) {
	x, y := u[4+2*p]-u[2*p], u[5+2*p]-u[2*p+1]
	return x*l.normal[0] + y*l.normal[1], x*l.tangent[0] + y*l.tangent[1]
}

// Element adds up the tractions of both ends, each over half the length.
func (f *Interface) Element(e int, u, ke, fe []float64) {
	l := f.line(e)
	area := l.length / interfacePoints * f.Thickness
	for p := range interfacePoints {
		across, along := l.gap(p, u)
		t := f.Law(e*interfacePoints+p, Place{Element: e, X: l.x[p], Y: l.y[p]}, across, along)
		n, s := l.normal, l.tangent
		force := [2]float64{area * (t.Across*n[0] + t.Along*s[0]), area * (t.Across*n[1] + t.Along*s[1])}
		var k [2][2]float64
		for i := range 2 {
			for j := range 2 {
				k[i][j] = area * (t.Growth[0]*n[i]*n[j] + t.Growth[1]*(n[i]*s[j]+s[i]*n[j]) + t.Growth[2]*s[i]*s[j])
			}
		}
		first, second := 2*p, 4+2*p
		for i := range 2 {
			fe[first+i] -= force[i]
			fe[second+i] += force[i]
			for j := range 2 {
				ke[(first+i)*8+first+j] += k[i][j]
				ke[(second+i)*8+second+j] += k[i][j]
				ke[(first+i)*8+second+j] -= k[i][j]
				ke[(second+i)*8+first+j] -= k[i][j]
			}
		}
	}
}

// Accept tells Accepted the gap at every point.
func (f *Interface) Accept(u []float64) {
	if f.Accepted == nil {
		return
	}
	f.EachGap(u, f.Accepted)
}

// EachGap calls see with the gap at every point for displacements u of all nodes.
func (f *Interface) EachGap(u []float64, see func(point int, across, along float64)) {
	var own [8]float64
	for e := range len(f.Node) / 4 {
		for i, n := range f.Node[4*e : 4*e+4] {
			own[2*i], own[2*i+1] = u[2*n], u[2*n+1]
		}
		l := f.line(e)
		for p := range interfacePoints {
			across, along := l.gap(p, own[:])
			see(e*interfacePoints+p, across, along)
		}
	}
}
