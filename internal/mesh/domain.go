package mesh

import "slices"

// Point is a place in the plane, x then y, in any one unit of length.
type Point = [2]float64

// Domain is what to mesh. Only Outline is required.
type Domain struct {
	// Outline holds the outer rings, without repeating the first point, turning
	// either way. Several rings may stand apart or touch; none may overlap.
	Outline [][]Point
	// Holes are cut out. They may touch one another and the outline.
	Holes [][]Point
	// Lines become edges of the mesh: joints, cracks, edges of fixtures. They may
	// cross, touch, coincide or end anywhere; what lies outside is left out and
	// named in [Mesh.Clipped]. A nil line keeps its number and is not there.
	Lines [][]Point
	// Points become corners of triangles.
	Points []Point

	// Size gives the longest side allowed at each place; nil leaves it to the
	// angles alone.
	Size Sizing
	// MinAngle in degrees, below 34; zero means 26.
	MinAngle float64
	// Finest stops the cutting for the sake of angles, so that a sliver between two
	// lines does not cost millions of triangles: triangles with a side up to 2.5
	// times as long may be left with smaller angles. Zero means 1e-5 of the extent.
	Finest float64
	// Smooth is how many rounds of smoothing follow; zero for none.
	Smooth int
	// Snap is the distance within which points, and points and lines, become one.
	// Zero means 1e-10 of the extent; less than 1e-13 of the extent is raised to it.
	Snap float64
	// Gap, when positive, refuses an input where a point comes nearer than this to a
	// line it is not joined to.
	Gap float64
	// MaxTriangles stops a mesh that grows too large; zero means 5 000 000.
	MaxTriangles int
	// Unstructured meshes a grid of rectangles like any other shape, where
	// otherwise it would be cut into regular triangles.
	Unstructured bool
}

const (
	defaultMinAngle     = 26
	largestMinAngle     = 34
	defaultFinest       = 1e-5
	defaultSnap         = 1e-10
	smallestSnap        = 1e-13
	defaultMaxTriangles = 5_000_000
	// Beyond these the exact signs could overflow or underflow: they multiply four
	// differences, and keep remainders 2^-106 as large.
	largestCoordinate  = 1e60
	smallestExtent     = 1e-20
	smallestCoordinate = 1e-40
)

// copied shares no paths with d, so that the caller may change his afterwards.
func (d Domain) copied() Domain {
	for _, paths := range [3]*[][]Point{&d.Outline, &d.Holes, &d.Lines} {
		*paths = slices.Clone(*paths)
		for i, path := range *paths {
			(*paths)[i] = slices.Clone(path)
		}
	}
	d.Points = slices.Clone(d.Points)
	return d
}

// Kind tells the three sorts of input a side can lie on apart.
type Kind uint8

const (
	OnOutline Kind = iota
	OnHole
	OnLine
)

func (k Kind) String() string { return [...]string{"outline", "hole", "line"}[k] }

// Mark names one input a side lies on: the ring or line Index of its Kind.
type Mark struct {
	Kind  Kind
	Index int32
}
