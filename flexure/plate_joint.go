package flexure

import (
	"math"

	"slabwright/plan"
	"slabwright/steel"
)

// JointBent is what one joint does in a bent slab. LTE and stress ratio are of what
// the loads add to weight and warp, at the place of the joint where they press the
// slab down furthest; a falling weight measures the same.
type JointBent struct {
	Joint    string       `json:"joint"`
	Kind     TransferKind `json:"kind"`
	At       plan.Point   `json:"at"`
	Loaded   float64      `json:"loaded_m"`   // deflection by the loads of the side that goes down further
	Unloaded float64      `json:"unloaded_m"` // of the other side
	LTE      float64      `json:"lte"`        // unloaded over loaded; 0 if no load presses the joint down
	Stress   float64      `json:"stress_ratio"`
	Step     float64      `json:"step_m"`    // greatest step between the sides under all that acts
	Shear    float64      `json:"shear_n_m"` // greatest shear force spread along the joint, N/m
	Passed   float64      `json:"passed_n"`  // shear force across the whole joint, added up without sign, N
	Bars     []BarBent    `json:"bars,omitempty"`
}

// BarBent is one dowel at work.
type BarBent struct {
	At      plan.Point `json:"at"`
	Along   float64    `json:"along_m"`    // along the joint
	Force   float64    `json:"force_n"`    // shear through it
	Bearing float64    `json:"bearing_pa"` // on the concrete at the joint's face, by Friberg
}

// Effectiveness returns E_j of the joint from its load transfer.
func (j JointBent) Effectiveness() float64 { return steel.JointEffectiveness(j.LTE) }

// HardestBar returns the bar with the greatest force; ok is false without bars.
func (j JointBent) HardestBar() (most BarBent, ok bool) {
	for _, b := range j.Bars {
		if !ok || b.Force > most.Force {
			most, ok = b, true
		}
	}
	return most, ok
}

// joints works out every joint that has faces.
func (b *Bent) joints() {
	f := b.frame
	transfers := b.Plate.transfers()
	added := make([]float64, len(b.u))
	for i := range added {
		added[i] = b.u[i] - b.dead[i]
	}
	for j, t := range transfers {
		out := JointBent{Joint: t.Joint, Kind: t.Kind}
		met := false
		shear, _ := t.spread(b.Plate)
		for k, c := range f.net.faces {
			if c.joint != j {
				continue
			}
			met = true
			for _, share := range [3]float64{0, 0.5, 1} {
				b.see(&out, k, share, added)
			}
			for _, s := range f.springs[k] {
				step := f.step(k, s.at, b.u)
				out.Step = math.Max(out.Step, math.Abs(step))
				out.Passed += s.shear * math.Abs(step)
				out.Shear = math.Max(out.Shear, shear*math.Abs(step))
			}
		}
		if !met {
			continue
		}
		for _, bar := range f.bars {
			if bar.joint == j {
				force := bar.force(f, b.u)
				out.Bars = append(out.Bars, BarBent{bar.at, bar.along, force,
					steel.BearingStress(force, t.Bars.Support, t.Opening, t.Bars.Diameter, t.Bars.Modulus)})
			}
		}
		b.Joints = append(b.Joints, out)
	}
}

// see keeps the place of a face where the loads press the joint down furthest.
func (b *Bent) see(j *JointBent, k int, share float64, added []float64) {
	first, second := b.frame.sides(k, share, added)
	loaded, unloaded, near, far := first, second, 0, 2
	if second > first {
		loaded, unloaded, near, far = second, first, 2, 0
	}
	if !(loaded > j.Loaded) || b.Applied == 0 {
		return
	}
	c := b.frame.net.faces[k]
	from, to := b.frame.net.at(c.node[0]), b.frame.net.at(c.node[1])
	j.At, j.Loaded, j.Unloaded, j.LTE = from.Plus(to.Minus(from).Times(share)), loaded, unloaded, unloaded/loaded
	end := int(math.Round(share))
	way, _ := to.Minus(from).Unit()
	along := func(node int32) float64 {
		m, s := b.moment[node], b.still[node]
		return (m[0]-s[0])*way.X*way.X + (m[1]-s[1])*way.Y*way.Y + 2*(m[2]-s[2])*way.X*way.Y
	}
	j.Stress = 0
	if m := along(c.node[near+end]); m > 0 {
		j.Stress = along(c.node[far+end]) / m
	}
}
