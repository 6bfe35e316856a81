package flexure

import (
	"math"

	"slabwright/plan"
	"slabwright/source"
)

// spring ties the two sides of a face together: at a share of its length, in step and
// in turn.
type spring struct{ at, shear, bending float64 }

// bar is one dowel. Its force spreads in the slab from mid-depth to both faces, so it
// acts along the joint over a thickness: a single point would stress a thin plate
// without limit.
type bar struct {
	joint int
	at    plan.Point
	along float64 // along the joint, m
	parts []barPart
}

// barPart is one of the springs that a bar is made of.
type barPart struct {
	face      int
	share     float64 // along the face
	stiffness float64 // N/m
}

// barParts is how many springs stand for a bar.
const barParts = 5

// gauss3 is the rule on 0…1 that is exact for degree 5.
// Source: Abramowitz and Stegun, table 25.4.
var gauss3 = [3][2]float64{{0.5 - math.Sqrt(0.15), 5. / 18}, {0.5, 8. / 18}, {0.5 + math.Sqrt(0.15), 5. / 18}}

// addSprings lays what the joints pass on along their faces.
func (f *frame) addSprings() {
	f.springs = make([][]spring, len(f.net.faces))
	transfers := f.plate.transfers()
	for k, c := range f.net.faces {
		shear, bending := transfers[c.joint].spread(f.plate)
		if shear == 0 && bending == 0 {
			continue
		}
		length := math.Abs(c.to - c.from)
		for _, g := range gauss3 {
			f.springs[k] = append(f.springs[k], spring{g[0], g[1] * length * shear, g[1] * length * bending})
		}
	}
	for j, t := range transfers {
		if t.Kind == Dowelled {
			f.addBars(j, t)
		}
	}
}

// addBars puts the dowels of a joint in their places.
func (f *frame) addBars(j int, t Transfer) {
	joint := f.plate.Slab.Joints[j]
	fact := func(v float64) *source.Fact { return &source.Fact{Value: v} }
	joint.Dowels = &plan.Dowels{Spacing: fact(t.Bars.Spacing), Length: fact(0.4), Clear: fact(t.Bars.Clear)}
	path := plan.Polyline(joint.Path)
	stiffness := t.perBar()
	for _, b := range f.plate.Slab.DowelBars(joint) {
		along, at, _ := path.Nearest(b.From.Plus(b.To).Times(0.5))
		dowel := bar{joint: j, at: at, along: along}
		for i := range barParts {
			offset := (float64(i) - (barParts-1)/2) / barParts * f.plate.Thickness
			k, share := f.faceAt(j, along+offset)
			if k < 0 {
				k, share = f.faceAt(j, along)
			}
			if k < 0 {
				continue // in an opening
			}
			f.springs[k] = append(f.springs[k], spring{share, stiffness / barParts, 0})
			dowel.parts = append(dowel.parts, barPart{k, share, stiffness / barParts})
		}
		if len(dowel.parts) == barParts {
			f.bars = append(f.bars, dowel)
		}
	}
}

// force is the shear force through a bar at deflections u, N.
func (d bar) force(f *frame, u []float64) float64 {
	sum := 0.0
	for _, p := range d.parts {
		sum += p.stiffness * f.step(p.face, p.share, u)
	}
	return math.Abs(sum)
}

// faceAt finds the face of a joint at a distance along it, −1 if there is none.
func (f *frame) faceAt(joint int, along float64) (k int, share float64) {
	for k, c := range f.net.faces {
		if c.joint != joint || along < math.Min(c.from, c.to)-1e-9 || along > math.Max(c.from, c.to)+1e-9 {
			continue
		}
		return k, (along - c.from) / (c.to - c.from)
	}
	return -1, 0
}

// stepRow returns how the step of a face at a share of its length, second side less
// first, follows from the unknowns of its four nodes. Along a thin plate's side the
// deflection is a cubic, along a thick one's a straight line.
func (f *frame) stepRow(k int, t float64) (row [16]float64) {
	n := &f.net.faces[k].node
	a, b := f.net.at(n[0]), f.net.at(n[1])
	way := b.Minus(a)
	value := [2]float64{1 - t, t}
	slope := [2]float64{}
	if !f.net.kind.Thick {
		value = [2]float64{1 - 3*t*t + 2*t*t*t, 3*t*t - 2*t*t*t}
		slope = [2]float64{t - 2*t*t + t*t*t, t*t*t - t*t}
	}
	u := f.net.kind.Unknowns
	for i := range 2 {
		for side, sign := range [2]float64{-1, 1} {
			at := (2*side + i) * u
			row[at] = sign * value[i]
			row[at+1] = sign * slope[i] * way.X
			row[at+2] = sign * slope[i] * way.Y
		}
	}
	return row
}

// turnRow returns how the turn across a face, second side less first, follows from
// its unknowns; a straight line between the nodes.
func (f *frame) turnRow(k int, t float64) (row [16]float64) {
	n := &f.net.faces[k].node
	way, _ := f.net.at(n[1]).Minus(f.net.at(n[0])).Unit()
	across := way.Left()
	u := f.net.kind.Unknowns
	for i, share := range [2]float64{1 - t, t} {
		for side, sign := range [2]float64{-1, 1} {
			at := (2*side + i) * u
			row[at+1] = sign * share * across.X
			row[at+2] = sign * share * across.Y
		}
	}
	return row
}

// faceStiffness adds up the springs of a face.
func (f *frame) faceStiffness(k int, ke []float64, width int) {
	add := func(row [16]float64, stiffness float64) {
		if stiffness == 0 {
			return
		}
		for i := range width {
			for j := range i + 1 {
				ke[i*width+j] += stiffness * row[i] * row[j]
			}
		}
	}
	for _, s := range f.springs[k] {
		add(f.stepRow(k, s.at), s.shear)
		add(f.turnRow(k, s.at), s.bending)
	}
}

// step returns the step of a face: deflection of the second side less the first.
func (f *frame) step(k int, share float64, u []float64) float64 {
	row, sum := f.stepRow(k, share), 0.0
	unknowns := f.net.kind.Unknowns
	for i, n := range f.net.faces[k].node {
		for q := range unknowns {
			sum += row[i*unknowns+q] * u[int(n)*unknowns+q]
		}
	}
	return sum
}

// sides returns the deflections of both sides of a face.
func (f *frame) sides(k int, share float64, u []float64) (first, second float64) {
	row := f.stepRow(k, share)
	unknowns := f.net.kind.Unknowns
	for i, n := range f.net.faces[k].node {
		for q := range unknowns {
			v := row[i*unknowns+q] * u[int(n)*unknowns+q]
			if i < 2 {
				first -= v
			} else {
				second += v
			}
		}
	}
	return first, second
}
