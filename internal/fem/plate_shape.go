package fem

// PlateShape is a kind of plate element on the corners of a mesh of three-node
// triangles or four-node quadrilaterals.
//
// Unknowns of a node are the deflection w, positive down, then the slopes along x
// and y: the derivatives of w in a thin element, the rotations of the cross-section
// with the same sign in a thick one. [BFS] has the twist w,xy as a fourth.
type PlateShape struct {
	Name     string
	Unknowns int    // per node
	Mesh     *Shape // of the mesh it needs
	Thick    bool   // shears as well as bends
	// Upright says that only rectangles along the axes will do.
	Upright bool

	rule []rulePoint
	fill func(g *geometry, xi, eta float64, f *plateField)
}

// plateUnknowns is the most unknowns of an element.
const plateUnknowns = 3 * maxNodes

// plateField says what each unknown of an element contributes at a point.
type plateField struct {
	w         [plateUnknowns]float64
	curvature [3][plateUnknowns]float64 // w,xx w,yy 2w,xy; in a thick plate of the rotations
	shear     [2][plateUnknowns]float64 // w,x and w,y less the rotations
}

// The plate elements.
//
//   - ACM: thin rectangle with 12 unknowns. Slopes across sides do not quite match;
//     it converges all the same on rectangles.
//   - BFS: thin rectangle with 16 unknowns whose slopes match. The most accurate here.
//   - DKT: thin triangle with 9 unknowns, bending only at the points that matter.
//   - MITC4 and MITC3: thick quadrilateral and triangle whose shear is tied along the
//     sides so that they do not stiffen up when thin.
//   - Quartic: thick quadrilateral of the fourth degree, for answers of many digits.
//
// Sources: Adini and Clough 1961 and Melosh 1963 as given by Zienkiewicz, The finite
// element method, ch. 10 (ACM); Bogner, Fox and Schmit 1965 (BFS); Batoz, Bathe and
// Ho, International Journal for Numerical Methods in Engineering 15 (1980) (DKT);
// Bathe and Dvorkin, same journal 21 (1985) (MITC4); Lee and Bathe, Computers &
// Structures 82 (2004) (MITC3).
var (
	ACM     = &PlateShape{Name: "acm", Unknowns: 3, Mesh: Q4, Upright: true, rule: squareRule(gauss4), fill: fillACM}
	BFS     = &PlateShape{Name: "bfs", Unknowns: 4, Mesh: Q4, Upright: true, rule: squareRule(gauss4), fill: fillBFS}
	DKT     = &PlateShape{Name: "dkt", Unknowns: 3, Mesh: T3, rule: triangleRule6, fill: fillDKT}
	MITC4   = &PlateShape{Name: "mitc4", Unknowns: 3, Mesh: Q4, Thick: true, rule: squareRule(gauss2), fill: fillMITC4}
	Quartic = &PlateShape{Name: "quartic", Unknowns: 3, Mesh: Q25, Thick: true, rule: squareRule(gauss5), fill: fillQuartic}

	MITC3 = &PlateShape{Name: "mitc3", Unknowns: 3, Mesh: T3, Thick: true, rule: triangleRule3, fill: fillMITC3}
)
