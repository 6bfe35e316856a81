package fem

import "slabwright/internal/sparse"

// Part is anything that resists movement or pushes: a sheet, a plate, an interface,
// a bed of springs. A [System] adds parts up.
type Part interface {
	// Name is how messages call the part.
	Name() string
	// Connectivity says which nodes each of the part's elements joins.
	Connectivity() sparse.Connectivity
	// Element fills the stiffness ke and the force fe of element e at displacements
	// u, both zero before. fe is what the element holds against: internal force less
	// load; ke is its derivative, or something near it that is symmetric. It may be called from several goroutines at once.
	Element(e int, u, ke, fe []float64)
}

// Remembering is a part whose answer depends on what it went through: slip, opening.
type Remembering interface {
	Part
	// Accept makes u, the displacements of all nodes, the state to go on from.
	Accept(u []float64)
}

// Linear is a part whose ke does not depend on u and whose fe is linear in it. The
// stiffness of a system of linear parts alone is factored once.
type Linear interface {
	Part
	Linear() bool
}
