package flexure

import (
	"fmt"
	"math"

	"slabwright/plan"
)

// Theory is which plate theory a number belongs to. They differ by 2 to 4 % near a
// wheel on usual slabs.
type Theory string

// Theories of plates.
const (
	Thin  Theory = "thin"  // Kirchhoff: cross-sections stay square to the slab, as the closed forms have it
	Thick Theory = "thick" // Mindlin and Reissner: the slab shears as well
)

// Zone is a part of the plan with its own support; 0 is a void, a place where the
// slab is hollow. Where zones overlap the last one counts.
type Zone struct {
	ID      string       `json:"id"`
	Area    []plan.Point `json:"area_m"`
	Support float64      `json:"support_n_m3"`
}

// Warp is the difference in temperature and drying through the depth, as a straight
// line and what is left of the profile at the faces. The top colder or drier than the
// underside counts negative: edges up.
type Warp struct {
	Difference float64 `json:"difference_k"`    // top less bottom over the full thickness; shrinkage by [EquivalentDifference]
	Expansion  float64 `json:"expansion_per_k"` // coefficient of thermal expansion
	// Left at the faces beyond the straight line: strain held back, positive for tension.
	// It balances itself within the depth and adds to the stress of the face only.
	Top    float64 `json:"top_left,omitempty"`
	Bottom float64 `json:"bottom_left,omitempty"`
}

// WarpOfProfile returns the warp of shortening through the depth, which shrinks and
// bends the slab alike, and what is left at the faces: see [EquivalentOfProfile].
// Depths from the top, m.
func WarpOfProfile(depths, shortening []float64, expansion float64) Warp {
	mean, difference := EquivalentOfProfile(depths, shortening, expansion)
	half := difference * expansion / 2
	return Warp{Difference: -difference, Expansion: expansion, Top: shortening[0] - mean - half, Bottom: shortening[len(shortening)-1] - mean + half}
}

// Plate is a slab in plan, bent on ground that can push but not pull: what it is
// made of, what it lies on, what stands on it, what its joints pass on.
//
// Each panel between joints is a plate with free edges. Joints pass what [Transfer]
// says. Openings are holes with free edges; walls and old slabs beside it do not
// hold it.
type Plate struct {
	ID         string     `json:"id"`    // of its workings; "plate" if empty
	Title      string     `json:"title"` // of its workings
	Slab       plan.Slab  `json:"slab"`
	Thickness  float64    `json:"thickness_m"`
	Modulus    float64    `json:"modulus_pa"` // eased by creep for loads that stay
	Poisson    float64    `json:"poisson"`
	Support    float64    `json:"support_n_m3"` // k: pressure over settlement
	Zones      []Zone     `json:"zones,omitempty"`
	UnitWeight float64    `json:"unit_weight_n_m3"`
	Warp       Warp       `json:"warp"`
	Loads      []Load     `json:"loads,omitempty"`
	Joints     []Transfer `json:"joints,omitempty"` // for joints not named here: see [DefaultTransfer]
	Strength   float64    `json:"strength_pa,omitempty"`

	Theory Theory `json:"theory,omitempty"` // Thin if empty
	// Pulls lets the ground pull as well as push, as the closed forms have it. For
	// comparison with them; not for a slab.
	Pulls bool    `json:"pulls,omitempty"`
	Size  float64 `json:"size_m,omitempty"` // longest side of an element; 0 for 0.3 l
	Fine  float64 `json:"fine_m,omitempty"` // of elements under a load; 0 for an eighth of the load, within bounds
	// Triangles meshes in triangles even where all lines run along the axes.
	Triangles bool `json:"triangles,omitempty"`

	// Progress, if not nil, is told what is being done.
	Progress func(stage string) `json:"-"`
}

// Check returns all that is wrong with the plate, in the engineer's words; nil when
// it can be worked.
func (p Plate) Check() []error {
	b := bounds{}
	b.slab(p.Thickness, p.Modulus, p.Poisson, p.Support)
	b.need("unit weight", p.UnitWeight, 0, 50000, "N/m³")
	b.need("temperature difference", p.Warp.Difference, -200, 200, "K")
	b.need("coefficient of expansion", p.Warp.Expansion, 0, 3e-5, "1/K")
	b.need("strain left at the top", p.Warp.Top, -0.005, 0.005, "")
	b.need("strain left at the underside", p.Warp.Bottom, -0.005, 0.005, "")
	b.need("strength", p.Strength, 0, 1e8, "Pa")
	b.need("element size", p.Size, 0, 100, "m")
	b.need("element size under loads", p.Fine, 0, 100, "m")
	if p.Theory != "" && p.Theory != Thin && p.Theory != Thick {
		b.say("theory", string(p.Theory), "thin or thick", "Leave it empty for thin.")
	}
	if p.Warp.Difference != 0 && p.UnitWeight == 0 && !p.Pulls {
		b.say("unit weight", "0 N/m³", "the weight of the slab, about 24 000 N/m³", "A slab without weight that curls has no stable contact with the ground.")
	}
	for _, problem := range p.Slab.Check() {
		b = append(b, problem)
	}
	if len(b) > 0 {
		return b
	}
	if n := p.area() / (p.size() * p.size()); n > tooMany {
		b.say("element size", fmt.Sprintf("%g m, %.0f elements", p.size(), n), fmt.Sprintf("up to %d elements", tooMany), "Take larger elements or a part of the slab.")
		return b
	}
	b = append(b, p.checkZones()...)
	b = append(b, p.checkLoads(p.Loads)...)
	return append(b, p.checkTransfers()...)
}

// say adds a problem.
func (b *bounds) say(field, found, want, mend string) {
	*b = append(*b, plan.Problem{Field: field, Found: found, Want: want, Mend: mend})
}

func (p Plate) checkZones() (found []error) {
	b := bounds{}
	for i, z := range p.Zones {
		name := fmt.Sprintf("zones[%d] %s", i, z.ID)
		if len(z.Area) < 3 || plan.Ring(z.Area).Area() == 0 {
			b.say(name, fmt.Sprintf("%d points", len(z.Area)), "an area", "Draw its outline.")
		}
		b.need(name+" support", z.Support, 0, 1e10, "N/m³")
	}
	return b
}

// id returns what the workings are called.
func (p Plate) id() string {
	if p.ID == "" {
		return "plate"
	}
	return p.ID
}

func (p Plate) theory() Theory {
	if p.Theory == "" {
		return Thin
	}
	return p.Theory
}

// stiffness returns l of the plate.
func (p Plate) stiffness() float64 {
	return RelativeStiffness(p.Modulus, p.Thickness, p.Poisson, p.Support)
}

// size returns the longest side of an element.
func (p Plate) size() float64 {
	if p.Size > 0 {
		return p.Size
	}
	return 0.3 * p.stiffness()
}

// supportAt returns k at a place.
func (p Plate) supportAt(x, y float64) float64 {
	for i := len(p.Zones) - 1; i >= 0; i-- {
		if plan.Ring(p.Zones[i].Area).Contains(plan.Point{X: x, Y: y}) {
			return p.Zones[i].Support
		}
	}
	return p.Support
}

// freeCurvature returns w,xx and w,yy of the slab if nothing held it; negative for
// edges up.
func (p Plate) freeCurvature() float64 {
	return FreeCurvature(p.Warp.Expansion, p.Warp.Difference, p.Thickness)
}

// weight returns the slab's own weight, N/m².
func (p Plate) weight() float64 { return p.UnitWeight * p.Thickness }

// openings returns the outlines of the holes.
func (p Plate) openings() (holes []plan.Ring) {
	for _, f := range p.Slab.Fixtures {
		if f.Opening && len(f.Shape) >= 3 && plan.Ring(f.Shape).Area() > 0 {
			holes = append(holes, f.Shape)
		}
	}
	return holes
}

// onSlab says whether a place is slab.
func (p Plate) onSlab(at plan.Point) bool {
	if !plan.Ring(p.Slab.Outline).Contains(at) {
		return false
	}
	for _, h := range p.openings() {
		if h.Contains(at) && h.Distance(at) > 1e-9 {
			return false
		}
	}
	return true
}

// area returns the plan area of the slab, m².
func (p Plate) area() float64 {
	area := plan.Ring(p.Slab.Outline).Area()
	for _, h := range p.openings() {
		area -= h.Area()
	}
	return math.Max(area, 0)
}
