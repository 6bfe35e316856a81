package flexure

import (
	"fmt"
	"math"
	"strings"

	"slabwright/plan"
	"slabwright/source"
	"slabwright/working"
)

// loadLines say what one load adds, beside its closed form.
func (b *Bent) loadLines(i int) []working.Line {
	p, l := b.Plate, b.Plate.Loads[i]
	if len(l.Line) > 0 {
		return b.lineLoadLines(i)
	}
	c := p.closedFor(l)
	mark := fmt.Sprintf("_%d", i+1)
	here := b.Under[i].Here
	stress, place, face := b.addedStress(c, l, here)
	deflection, still := here.ByLoads, here.Deflection-here.ByLoads
	if c.position != Interior {
		deflection, still = b.addedAtBorder(c, l)
	}
	c.reason += b.besides(i, still)
	name := strings.TrimSpace(l.Name + " " + l.ID)
	lines := []working.Line{
		b.stressLine("σ"+mark, fmt.Sprintf("What the loads add under %s, %s: tension %s%s", name, c.position, face, at(place)), stress).Beside(c.form, c.stress/1e6, c.source, c.reason),
		working.New("w"+mark, fmt.Sprintf("What the loads add to the deflection there, %s", c.position), "w − w_0", deflection*1e3, "mm", b.own(),
			working.In("w", (deflection+still)*1e3, "mm", "all together"), working.In("w_0", still*1e3, "mm", "by weight and warp")).
			Beside(c.form, c.deflection*1e3, c.source, c.reason),
	}
	if p.Strength > 0 && stress > 0 {
		lines = append(lines, b.crackLine(mark, c, l, stress))
	}
	return lines
}

// besides says what else acts at load i that its closed form does not know.
func (b *Bent) besides(i int, still float64) (text string) {
	for k, o := range b.Plate.Loads {
		if k != i && o.middle().To(b.Plate.Loads[i].middle()) < 3*b.Stiff {
			text = " Other loads stand near."
		}
	}
	if still < 0 {
		text += fmt.Sprintf(" Before the loads come the slab is clear of the ground here by %.2f mm.", -still*1e3)
	}
	return text
}

// crackLine is the load at which the slab first cracks, beside that at which it folds.
func (b *Bent) crackLine(mark string, c closed, l Load, stress float64) working.Line {
	p := b.Plate
	folds := CollapseLoad(c.position, l.radius()/b.Stiff, 0, CrackingMoment(p.Strength, p.Thickness))
	return working.New("P_cr"+mark, "Load at which it would first crack, alone", "P · f / σ", l.Force*p.Strength/stress/1e3, "kN", b.own(),
		working.In("P", l.Force/1e3, "kN", "load"), working.In("f", p.Strength/1e6, "MPa", "flexural strength"), working.In("σ", stress/1e6, "MPa", "stress the loads add")).
		Beside("load at which it folds along yield lines, plain concrete", folds/1e3, source.Cite("meyerhof1962", ""),
			"Another state: once cracked underneath the slab carries on until the top cracks as well, at 2 to 3 times the load in the interior.")
}

// addedStress is the stress that the loads add where the closed form has it: below the
// load, or on top some way from the corner.
func (b *Bent) addedStress(c closed, l Load, here Here) (stress float64, place plan.Point, face string) {
	if c.position != Corner {
		place = l.middle()
		if q, ok := b.Plate.borderPoint(l); ok && c.position == Edge {
			q = q.Plus(place.Minus(q).Times(0.02)) // on the load's side of a joint
			if h, on := b.At(q); on {
				here, place = h, q
			}
		}
		stress, _, _, _ = b.Plate.bendingStress(here.Added)
		return stress, place, "underneath"
	}
	way, _ := l.middle().Minus(c.corner).Unit()
	for r := 0.2; r < 2.5; r += 0.02 {
		q := c.corner.Plus(way.Times(r * b.Stiff))
		h, ok := b.At(q)
		if _, top, _, _ := b.Plate.bendingStress(h.Added); ok && top > stress {
			stress, place = top, q
		}
	}
	return stress, place, "on top"
}

// borderPoint returns the point of the nearest edge or joint beside a load.
func (p Plate) borderPoint(l Load) (plan.Point, bool) {
	best, at := math.Inf(1), plan.Point{}
	for _, b := range p.borders(l.middle(), l.radius()) {
		if b.away < best {
			t, _ := b.segment.Nearest(l.middle())
			best, at = b.away, b.segment.At(t)
		}
	}
	return at, best < math.Inf(1)
}

// addedAtBorder is the deflection the loads add at the edge or corner, on the side of
// a joint that goes down further, and what weight and warp make there.
func (b *Bent) addedAtBorder(c closed, l Load) (added, still float64) {
	q := c.corner
	if c.position == Edge {
		q, _ = b.Plate.borderPoint(l)
	}
	h, _ := b.At(q)
	added, still = h.ByLoads, h.Deflection-h.ByLoads
	for _, j := range b.Joints {
		if j.At.To(q) < 0.5*b.Stiff && j.Loaded > 0 {
			added = j.Loaded
		}
	}
	return added, still
}

// lineLoadLines set a line load beside a long slab under a line.
func (b *Bent) lineLoadLines(i int) []working.Line {
	p, l := b.Plate, b.Plate.Loads[i]
	per := l.Force / plan.Polyline(l.Line).Length()
	lambda := LineFactor(p.Support, p.Modulus/(1-p.Poisson*p.Poisson), p.Thickness)
	stress, _, _, _ := p.bendingStress(b.Under[i].Added)
	mark := fmt.Sprintf("_%d", i+1)
	why := "The form is of a line without end far from edges." + p.notCounted()
	return []working.Line{
		b.stressLine("σ"+mark, "What the loads add below the middle of line load "+l.ID+": tension underneath", stress).
			Beside("long slab under a line, P/4λ", per/(4*lambda)*6/(p.Thickness*p.Thickness)/1e6, source.Cite("hetenyi", "infinite beam"), why),
		working.New("w"+mark, "What the loads add to the deflection there", "w − w_0", b.Under[i].ByLoads*1e3, "mm", b.own(),
			working.In("w", b.Under[i].Deflection*1e3, "mm", "all together"), working.In("w_0", (b.Under[i].Deflection-b.Under[i].ByLoads)*1e3, "mm", "by weight and warp")).
			Beside("long slab under a line, Pλ/2k", per*lambda/(2*p.Support)*1e3, source.Cite("hetenyi", "infinite beam"), why),
	}
}
