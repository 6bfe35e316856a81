package restraint

import (
	"math"

	"slabwright/plan"
)

// Concrete is what a pour is like at one time.
type Concrete struct {
	// Strain is the free strain, shortening negative, as the mean through the depth;
	// only its changes count.
	Strain float64
	// Modulus of elasticity, Pa; 0 before the concrete has set or is there at all.
	Modulus float64
	// Strength in direct tension, mean value, Pa.
	Strength float64
	// Creep is how much creep there was since the set, as a creep coefficient that
	// only grows: a stress held over a step loses the share 1 − exp(−ΔCreep) in
	// relaxation.
	Creep float64
	// Face is tension at one face that balances itself through the depth (a cold or
	// dry top, curl held down), Pa. It adds to the tension in plan where a crack
	// starts, and makes no movement in plan.
	Face float64
	// Fracture is the energy that tears a crack open, N/m, less what the caller knows to
	// come from elsewhere, such as curl let go; 0 takes that of the settings.
	Fracture float64
}

// Pour is a part of the slab placed in one go.
type Pour struct {
	ID        string
	Area      []plan.Point // ring; nil for all that no other pour covers
	Thickness float64      // m
	At        func(hour float64) Concrete
}

// Base is what the slab lies on.
type Base struct {
	Stiffness float64 // against movement along the plane before it slips, N/m³
	// Friction is the coefficient of sliding friction. With next to none a piece that
	// nothing else holds has no place of its own, and its openings mean nothing.
	Friction   float64
	UnitWeight float64 // of the concrete, N/m³
	Adhesion   float64 // drag that needs no weight: a keyed or bonded base, Pa
}

// Limit returns the drag at which the base slips under a thickness of slab, Pa.
func (b Base) Limit(thickness float64) float64 {
	return b.Friction*b.UnitWeight*thickness + b.Adhesion
}

// LineKind says how a line came to be.
type LineKind string

// Kinds of line.
const (
	SawnLine      LineKind = "sawn"      // weakened by a groove; opens when it cracks below
	FormedLine    LineKind = "formed"    // open from the start: two casts or a stop end
	IsolationLine LineKind = "isolation" // filled with a strip
	CrackLine     LineKind = "crack"     // there already when the replay begins
)

// Line is a joint or a known crack and how it works.
type Line struct {
	ID   string
	Kind LineKind
	Path []plan.Point
	From float64 // hour at which it is sawn; a crack: at which it appeared
	// Share is what a groove leaves of the strength in direct tension, and
	// FaceShare of that of a face in bending (NetSectionTension, NetSectionBending).
	Share, FaceShare float64
	Bars             *Bars // across it; nil for none
	// Give is the width of a strip, m: sides that close push only once it is used up.
	Give float64
}

// Bars are dowels or ties across a line, as springs per metre of line.
type Bars struct {
	Across float64 // against opening: 0 when one half slides, N/m²
	Along  float64 // against sliding along the line: 0 when free sideways, N/m²
	Room   float64 // sideways before a bar is touched, m
	Clear  float64 // no bar nearer than this to a crossing with another line, m
	// Diameter is that of one bar, m; 0 where it is not known. It only serves to refuse
	// bars that the slab cannot hold.
	Diameter float64
}

// Hold says that something in or beside the slab holds its edge there.
type Hold struct {
	ID   string       // of the fixture
	Path []plan.Point // the edge it holds: a closed ring for an opening, or a line
	// Bond is the spring against moving off and along, N/m³; 0 where concrete can
	// part from it.
	Bond float64
	// Push is the spring against moving onto it, N/m³: 0 for rigid.
	Push float64
	Give float64 // of a strip between, m: it pushes once that is used up
}

// Settings steer a replay. The zero value of each means the default.
type Settings struct {
	Size     float64 // longest side of a triangle, m; 0.4
	Fine     float64 // the same at inside corners and fixtures, m; 0.12
	Growth   float64 // of triangles from one to the next away from such places; 1.3
	Reach    float64 // radius over which stress is averaged before it meets the strength, m; 0.15
	Poisson  float64 // 0.2
	Fracture float64 // energy that opens a crack, N/m; 100
	Contact  float64 // stiffness of sides that touch, N/m³; 1e12
	Lock     float64 // stiffness of touching sides along a crack, N/m³; 5e9
	LockGone float64 // opening at which that is lost, m; 0.9e-3
	Green    float64 // strength below which concrete is too young to be looked at here, Pa; 0.1e6
	Scatter  float64 // coefficient of variation of strength over the plan; 0 for none
	Patch    float64 // length over which strength varies, m; 0.7
	Seed     uint64  // of the scatter
	Settled  float64 // force left out of balance, as a share of the largest; 1e-5
	Over     float64 // tension over strength that a step may reach before it is halved; 1.08
	Miss     float64 // share of the work of a step not accounted for at which it is halved; 0.03
	Halvings int     // most times that a step is halved; 3
	Cracks   int     // most cracks and openings before it stops looking; 200
	Workers  int     // cores for one solve; 1
}

// Model is one slab and all that pulls on it.
type Model struct {
	Slab     plan.Slab // its outline and the openings of its fixtures
	Pours    []Pour
	Base     Base
	Lines    []Line
	Holds    []Hold
	Settings Settings

	laid *laid // shared by members of a sample
}

func (s Settings) filled() Settings {
	orElse := func(v *float64, other float64) {
		if *v == 0 {
			*v = other
		}
	}
	orElse(&s.Size, 0.4)
	orElse(&s.Fine, 0.12)
	orElse(&s.Growth, 1.3)
	orElse(&s.Reach, 0.15)
	orElse(&s.Poisson, 0.2)
	orElse(&s.Fracture, 100)
	orElse(&s.Contact, 1e12)
	orElse(&s.Lock, 5e9)
	orElse(&s.LockGone, 0.9e-3)
	orElse(&s.Patch, 0.7)
	orElse(&s.Green, 0.1e6)
	orElse(&s.Settled, 1e-5)
	orElse(&s.Over, 1.08)
	orElse(&s.Miss, 0.03)
	if s.Halvings == 0 {
		s.Halvings = 3
	}
	if s.Cracks == 0 {
		s.Cracks = 200
	}
	if s.Workers == 0 {
		s.Workers = 1
	}
	s.Fine = math.Min(s.Fine, s.Size)
	return s
}

// least is the length of the zone in which concrete tears before a crack runs freely,
// and so of the shortest crack: about the characteristic length of concrete for the
// usual reach.
func (s Settings) least() float64 { return 3 * s.Reach }
