package checks

import "slabwright/source"

// Input is one slab and all that is asked of it. A fact that nobody knows is nil,
// and the checks that need it are left out with the reason; facts that are no
// pointers are always needed.
type Input struct {
	Code     Code
	Slab     Slab
	Concrete Concrete
	Ground   Ground
	Loads    []Load
	Joint    Joint
	Steel    *Steel
	Use      Use

	Quick bool // closed forms only, without the plate: for trying many inputs in a moment
}

// Slab is one panel between joints.
type Slab struct {
	Thickness source.Fact // m
	Length    source.Fact // long side of the panel, m
	Width     source.Fact // short side, m
}

// Concrete is the hardened concrete in service.
type Concrete struct {
	Strength   source.Fact  // characteristic cylinder strength, MPa
	Modulus    *source.Fact // MPa; nil: by the code from the strength
	Poisson    source.Fact  // –
	UnitWeight source.Fact  // kN/m³
	Expansion  source.Fact  // 1/K
	Shrinkage  source.Fact  // mean shortening by drying still to come, –
}

// Ground is what the slab lies on.
type Ground struct {
	Support  source.Fact  // modulus of subgrade reaction on top of the base, MN/m³
	CBR      *source.Fact // bearing ratio of the subgrade, %
	Friction source.Fact  // –
	Base     string       // "granular" or "stabilised": how much of the movement it lets through
}

// Kind is what a load is.
type Kind string

// Kinds of load.
const (
	Wheel  Kind = "wheel"  // one wheel
	Axle   Kind = "axle"   // two wheels or two pairs of wheels
	Post   Kind = "post"   // a leg of racking on its base plate
	Line   Kind = "line"   // a wall or a row of feet
	Spread Kind = "spread" // stacked goods either side of an aisle
)

// Place is where a load stands.
type Place string

// Places, from the kindest to the hardest.
const (
	Interior Place = "interior" // further than about 1.5 l from any edge or joint
	AtJoint  Place = "joint"    // at a joint that passes on a share of the load
	FreeEdge Place = "edge"     // at an edge or a joint that passes on nothing
	Corner   Place = "corner"   // at a corner, eased as the joints there pass on
)

// Load is one thing that stands or drives on the slab, in use, without factors.
type Load struct {
	ID       string
	Name     string
	Kind     Kind
	Force    *source.Fact // on the wheel, the axle or the post, kN
	PerMetre *source.Fact // of a line load, kN/m
	PerArea  *source.Fact // of a spread load, kN/m²
	Pressure *source.Fact // of a tyre on the slab, MPa
	Wheels   int          // on the axle: 2 or 4
	Track    *source.Fact // between the middles of the wheels or pairs across the axle, m
	Pair     *source.Fact // between the middles of the two wheels of a pair, m
	PlateX   *source.Fact // sides of the base plate, m
	PlateY   *source.Fact
	Pitch    *source.Fact // to the next post along the rack, m
	Back     *source.Fact // to the post of the rack behind, m
	Places   []Place      // none: interior, joint and corner
	Passes   *source.Fact // over the life at the worst place
}

// Transfer is what carries load across a joint.
type Transfer string

// Kinds of transfer.
const (
	NoTransfer Transfer = "none"
	Interlock  Transfer = "interlock"
	Dowelled   Transfer = "dowelled"
	Tied       Transfer = "tied"
	Keyed      Transfer = "keyed"
)

// Joint is the kind of joint the slab has most of.
type Joint struct {
	Transfer  Transfer
	Share     *source.Fact // of a load that the joint passes on, 0 to 0.5; nil: by the kind
	Spacing   source.Fact  // of working joints, m
	Cooling   source.Fact  // fall of the mean temperature since the joint formed, K
	Dowels    *Dowels
	Filler    *source.Fact // share of its width that the filler or sealant stretches and closes, –
	FillWidth *source.Fact // width of the filled groove, m
}

// Dowels are the bars across the joint.
type Dowels struct {
	Diameter source.Fact // m
	Length   source.Fact // m
	Spacing  source.Fact // m
	Support  source.Fact // modulus of dowel support, N/mm³
	Yield    source.Fact // MPa
}

// Steel is mesh or bars in the slab, the same both ways.
type Steel struct {
	Diameter source.Fact // m
	Spacing  source.Fact // m
	Cover    source.Fact // to the face the cracks matter at, m
	Yield    source.Fact // MPa
	Free     source.Fact // length between free joints in the direction of the bars, m
	Held     bool        // the slab is held at its ends: cracks come from shortening
}

// Use is what the slab is for.
type Use struct {
	Class    string       // a row of uses.csv, such as "pneumatic tyres over 3 t"; "": not checked
	Exposure string       // exposure class of the code: "XC4", "B1", "F2"; "": not checked
	Control  string       // degree of crack control of AS 3600: minor, moderate, strong
	Hot      *source.Fact // greatest difference with the top warmer, K over the thickness
	Cold     *source.Fact // greatest difference with the top colder or drier, as a positive number, K
	Residual *source.Fact // moment the cracked slab still bears (fibre, mesh), kN·m/m; nil: none
}
