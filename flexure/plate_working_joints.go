package flexure

import (
	"fmt"
	"math"

	"slabwright/plan"
	"slabwright/source"
	"slabwright/steel"
	"slabwright/working"
)

// jointLines say what a joint passes on.
func (b *Bent) jointLines(j JointBent) []working.Line {
	p := b.Plate
	t := p.transferOf(j.Joint)
	var lines []working.Line
	if j.Loaded > b.tellFrom(func(j JointBent) float64 { return j.Loaded }) {
		radius := 0.2 * b.Stiff
		if len(p.Loads) > 0 && p.Loads[0].radius() > 0 {
			radius = p.Loads[0].radius()
		}
		line := working.New("η_"+j.Joint, fmt.Sprintf("Load transfer by deflection of joint %s, %s%s", j.Joint, j.Kind, at(j.At)), "w_u / w_l", j.LTE, "–", b.own(),
			working.In("w_u", j.Unloaded*1e3, "mm", "the other side"), working.In("w_l", j.Loaded*1e3, "mm", "the side that goes down further"))
		if t.Kind != FreeJoint {
			line = line.Beside("regression on two half-slabs and a shear spring", t.Efficiency(p, radius), source.Cite("ioannides1985", "Ioannides and Hammons 1996"),
				"The form is of one wheel at the joint of two slabs without end; bars are spread along it. A load away from the joint presses both sides down alike, warp leaves a gap that closes first.")
		}
		lines = append(lines, line)
	}
	hardest := func(j JointBent) float64 { bar, _ := j.HardestBar(); return bar.Force }
	if bar, ok := j.HardestBar(); ok && bar.Force > b.tellFrom(hardest) {
		lines = append(lines, b.barLines(j, t, bar)...)
	}
	return lines
}

// tellFrom is the value below which a joint is not worth a line: a tenth of that of the
// joint with most.
func (b *Bent) tellFrom(value func(JointBent) float64) (from float64) {
	for _, j := range b.Joints {
		from = math.Max(from, value(j)/10)
	}
	return from
}

func (p Plate) transferOf(joint string) Transfer {
	for _, t := range p.transfers() {
		if t.Joint == joint {
			return t
		}
	}
	return Transfer{}
}

// barLines set the hardest worked dowel beside Friberg's group.
func (b *Bent) barLines(j JointBent, t Transfer, bar BarBent) []working.Line {
	friberg := source.Cite("friberg1940", "")
	spring := t.perBar()
	force := working.New("F_"+j.Joint, "Greatest force through one dowel of joint "+j.Joint+at(bar.At), "D · δ / 1000", bar.Force/1e3, "kN", b.own(),
		working.In("D", spring/1e6, "kN/mm", "spring of one dowel"), working.In("δ", bar.Force/spring*1e6, "µm", "step between the sides there"))
	if group := b.fribergForce(j, t, bar); group > 0 {
		force = force.Beside("group of dowels within l of each load, with the share the joint passes on", group/1e3, friberg,
			"The group has forces fall off on a straight line and counts loads at the joint only; warp and loads further off are not in it.")
	}
	beta := steel.RelativeStiffness(t.Bars.Support, t.Bars.Diameter, t.Bars.Modulus)
	return []working.Line{force,
		working.New("σ_"+j.Joint, "Bearing stress of that dowel on the concrete at the joint's face", "1000 · K · F · (2 + β · z) / (4 · β³ · E_s · π · d⁴ / 64)", bar.Bearing/1e6, "MPa", friberg,
			working.In("K", t.Bars.Support/1e9, "N/mm³", "support of a dowel"), working.In("F", bar.Force/1e3, "kN", "force"), working.In("β", beta/1e3, "1/mm", "relative stiffness"),
			working.In("z", t.Opening*1e3, "mm", "opening"), working.In("E_s", t.Bars.Modulus/1e6, "MPa", "modulus of the bar"), working.In("d", t.Bars.Diameter*1e3, "mm", "diameter"))}
}

// fribergForce is the force of a dowel by group action: each load within l of the joint
// sends the share that the closed form expects.
func (b *Bent) fribergForce(j JointBent, t Transfer, bar BarBent) float64 {
	p := b.Plate
	var path plan.Polyline
	for _, joint := range p.Slab.Joints {
		if joint.ID == j.Joint {
			path = joint.Path
		}
	}
	places := make([]float64, len(j.Bars))
	hardest := 0
	for i, x := range j.Bars {
		places[i] = x.Along
		if x == bar {
			hardest = i
		}
	}
	var loads []steel.WheelLoad
	for _, l := range p.Loads {
		along, _, away := path.Nearest(l.middle())
		if len(l.Line) == 0 && away < l.radius()+besideEdge*b.Stiff {
			loads = append(loads, steel.WheelLoad{Force: l.Force, Place: along})
		}
	}
	if len(loads) == 0 {
		return 0
	}
	e := t.Efficiency(p, p.Loads[0].radius())
	return steel.DowelForces(places, loads, steel.ReachFE*b.Stiff, e/(1+e))[hardest]
}
