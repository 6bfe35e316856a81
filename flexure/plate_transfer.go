package flexure

import (
	"fmt"
	"math"

	"slabwright/plan"
	"slabwright/steel"
)

// TransferKind says what a joint passes from one panel to the next.
type TransferKind string

// Kinds of transfer.
const (
	FreeJoint  TransferKind = "free"      // nothing: isolation, a wide joint
	Interlock  TransferKind = "interlock" // shear, by the stones of two rough faces
	Dowelled   TransferKind = "dowelled"  // shear, by bars; with Interlock > 0 by stones as well
	Tied       TransferKind = "tied"      // shear and some bending, by bars that hold it shut
	WholeJoint TransferKind = "whole"     // everything: a groove not yet cracked through
)

// Transfer is what one joint passes on.
type Transfer struct {
	Joint     string       `json:"joint"` // id of the plan's joint
	Kind      TransferKind `json:"kind"`
	Opening   float64      `json:"opening_m"`                // of the crack between the faces
	Interlock float64      `json:"interlock_n_m2,omitempty"` // shear force per length and step; 0: by the opening where interlock counts
	Moment    float64      `json:"moment_n,omitempty"`       // bending moment per length and turn of a tied joint; 0: by its bars
	Bars      Bars         `json:"bars"`                     // of dowelled and tied joints
}

// Bars are the dowels or ties across a joint.
type Bars struct {
	Diameter float64 `json:"diameter_m"`
	Spacing  float64 `json:"spacing_m"`
	Clear    float64 `json:"clear_m"`      // first and last bar from the ends of the joint
	Support  float64 `json:"support_n_m3"` // K of the concrete under a bar: 81 to 407e9 published, a fitted number
	Modulus  float64 `json:"modulus_pa"`   // of the steel
	Free     float64 `json:"free_m"`       // length over which a tie can stretch
}

// UsualBars returns bars of an eighth of the thickness at 300 mm.
//
// Source: diameter: rule of thumb seen in lecture slides. Spacing: common practice.
// Support: the upper end of the range printed for 1.5 million pci.
func UsualBars(thickness float64) Bars {
	return Bars{Diameter: steel.DowelDiameterByThumb(thickness), Spacing: 0.3, Clear: 0.15, Support: 407e9, Modulus: 200e9, Free: 0.1}
}

const steelPoisson = 0.3

// DefaultTransfer reads from a joint of the plan what it passes on. What the plan
// does not know is taken unkindly: a formed joint as free, a sawn one as open by
// 1 mm; both belong in the assumptions.
func DefaultTransfer(j plan.Joint, thickness float64) Transfer {
	t := Transfer{Joint: j.ID, Kind: FreeJoint, Opening: j.Opening.Or(0.001), Bars: UsualBars(thickness)}
	if d := j.Dowels; d != nil {
		t.Bars.Diameter, t.Bars.Spacing = d.Diameter.Or(t.Bars.Diameter), d.Spacing.Or(t.Bars.Spacing)
		t.Bars.Clear = d.Clear.Or(t.Bars.Spacing / 2)
	}
	switch {
	case j.Kind == plan.Isolation || j.Transfer.Is("none"):
	case j.Kind == plan.Sawn && j.Opened.Is("no"):
		t.Kind = WholeJoint
	case j.Transfer.Is("dowelled") || j.Transfer == nil && j.Dowels != nil:
		t.Kind = Dowelled
	case j.Transfer.Is("tied"):
		t.Kind, t.Opening = Tied, j.Opening.Or(0.0002)
	case j.Transfer.Is("interlock") || j.Kind == plan.Sawn:
		t.Kind = Interlock
	}
	return t
}

// transfers returns what each joint of the plan passes on, in the plan's order.
func (p Plate) transfers() []Transfer {
	out := make([]Transfer, len(p.Slab.Joints))
	for i, j := range p.Slab.Joints {
		out[i] = DefaultTransfer(j, p.Thickness)
		for _, t := range p.Joints {
			if t.Joint == j.ID {
				out[i] = t
			}
		}
	}
	return out
}

func (p Plate) checkTransfers() []error {
	b := bounds{}
	known := map[string]bool{}
	for _, j := range p.Slab.Joints {
		known[j.ID] = true
	}
	for i, t := range p.Joints {
		field := fmt.Sprintf("joints[%d] %s", i, t.Joint)
		if !known[t.Joint] {
			b.say(field, "no such joint on the plan", "the id of a joint", "Draw the joint or take its transfer out.")
		}
		switch t.Kind {
		case FreeJoint, Interlock, Dowelled, Tied, WholeJoint:
		default:
			b.say(field, "transfer "+string(t.Kind), "free, interlock, dowelled, tied or whole", "Choose one of these.")
		}
		b.need(field+" opening", t.Opening, 0, 0.1, "m")
		b.need(field+" interlock", t.Interlock, 0, 1e13, "N/m²")
		b.need(field+" bending stiffness", t.Moment, 0, 1e13, "N")
		if t.Kind == Dowelled || t.Kind == Tied && t.Moment == 0 {
			b.need(field+" bar diameter", t.Bars.Diameter, 0.004, 0.1, "m")
			b.need(field+" bar spacing", t.Bars.Spacing, 0.05, 3, "m")
			b.need(field+" bar support", t.Bars.Support, 1e9, 1e13, "N/m³")
			b.need(field+" bar modulus", t.Bars.Modulus, 1e9, 1e12, "Pa")
			b.need(field+" clear length at the ends", t.Bars.Clear, 0, 10, "m")
		}
		if t.Kind == Tied && t.Moment == 0 {
			b.need(field+" free length of a tie", t.Bars.Free, 0.005, 2, "m")
		}
	}
	return b
}

// InterlockStiffness returns the shear stiffness of two rough faces by how far the
// joint is open, N/m²: shear force per length over the step.
//
//	opening   of the crack below the groove [m]
//	support   of the ground [N/m³]   stiffness   l of the slab [m]
//
// The exponential curve runs through two published points, turned into stiffness by
// [TransferEfficiency] under a wheel of a = 0.2 l: at the usable opening the joint
// just meets the lenient criterion; at 1.5 mm it passes on 15 % of a load, so
// w_u/w_l = 0.15/0.85. The exponential between and beyond is our own choice. Stone,
// repetitions and thickness are not in it.
//
// Source: Colley and Humphrey (1967) as quoted on a contractor's page, seen;
// Ioannides and Hammons (1996), from memory.
func InterlockStiffness(opening, support, stiffness float64) float64 {
	near := steel.InterlockUsableOpening() / 1e3
	share, far := steel.InterlockDesignTransfer()
	far /= 1e3
	criterion, _ := steel.TransferCriterion("lenient")
	atNear, atFar := transferFor(criterion), transferFor(share/(1-share))
	rate := math.Log(atNear/atFar) / (far - near)
	return atNear * math.Exp(rate*(near-opening)) * support * stiffness
}

// transferFor is [TransferEfficiency] turned round for a wheel of a = 0.2 l.
func transferFor(efficiency float64) float64 {
	const radius = 0.2
	return math.Pow(10, 0.214-0.183*radius-1.18*math.Log10(1/efficiency-1))
}

// perBar returns the shear stiffness of one bar, N/m: Friberg's bar in the concrete
// on both sides, and across the gap.
func (t Transfer) perBar() float64 {
	const shut = 1e-4 // m; a closed joint bends the bar over this much all the same
	return steel.DowelShearStiffness(t.Bars.Support, t.Bars.Diameter, t.Bars.Modulus, steelPoisson, math.Max(t.Opening, shut))
}

// spread returns the stiffness along the joint apart from single bars: shear, N/m²,
// and bending, N.
func (t Transfer) spread(p Plate) (shear, bending float64) {
	switch t.Kind {
	case Interlock, Tied:
		shear = t.Interlock
		if shear == 0 {
			shear = InterlockStiffness(t.Opening, p.Support, p.stiffness())
		}
	case Dowelled:
		shear = t.Interlock
	}
	if t.Kind == Tied {
		bending = t.Moment
		if bending == 0 {
			bending = TieBending(t.Bars, p.Thickness)
		}
	}
	return shear, bending
}

// TieBending returns the bending moment per length and turn of a joint whose bars at
// mid-depth stretch while the faces bear on each other at the top or the underside.
//
// Source: our own, statics: E A/(s L) (h/2)².
func TieBending(b Bars, thickness float64) float64 {
	return b.Modulus * steel.CircleArea(b.Diameter) / (b.Spacing * b.Free) * thickness * thickness / 4
}

// Efficiency returns the load transfer by deflection that a closed form expects of
// the joint under a wheel of a given contact radius: bars are spread along it.
//
// Source: Ioannides and Hammons (1996); Tabatabaie and Barenberg (1978) for bars.
func (t Transfer) Efficiency(p Plate, radius float64) float64 {
	l := p.stiffness()
	shear, _ := t.spread(p)
	if t.Kind == Dowelled {
		shear += t.perBar() / t.Bars.Spacing
	}
	return TransferEfficiency(shear/(p.Support*l), radius/l)
}

// BaseTransfer is what the layers below pass on where the joint itself passes nothing:
// unbound granular, asphalt or cement treated, lean concrete. Springs that stand each
// for itself, as under the plate, do not know it.
//
// Source: mechanistic-empirical pavement design guide (NCHRP 1-37A, 2004), from memory.
const (
	GranularTransfer = 0.20
	TreatedTransfer  = 0.30
	LeanTransfer     = 0.40
)

// MeasuredTransfer is the load transfer by deflection that a falling weight finds at a
// joint: what the joint does, and what the base does for the rest.
//
//	joint   by the joint alone, 0 to 1   [–]
//	base    see [GranularTransfer]       [–]
//
// Source: as [GranularTransfer].
func MeasuredTransfer(joint, base float64) float64 { return 1 - (1-joint)*(1-base) }
