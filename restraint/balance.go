package restraint

import (
	"fmt"
	"math"
)

// NotSettled says that a step did not come to rest, and where.
type NotSettled struct {
	Hour float64
	What string // the line, hold or base furthest from balance
	X, Y float64
	Left float64 // out of balance, as a share of the largest force
	line int
	Why  error
}

func (e *NotSettled) Error() string {
	text := fmt.Sprintf("hour %.4g: %s near x %.2f, y %.2f did not settle; %.2g of the largest force is out of balance. Give times that lie closer together there",
		e.Hour, e.What, e.X, e.Y, e.Left)
	if e.Why != nil {
		text += ": " + e.Why.Error()
	}
	return text
}

func (e *NotSettled) Unwrap() error { return e.Why }

// balance is one search for the displacements at which the sheet, the base and the
// seams are in balance. Every part resists more the further it is moved, so there is
// one answer, and Newton's method with a search along its line finds it from
// anywhere.
type balance struct {
	*frame
	set     Settings
	plane   [3]float64
	modulus []float64    // of each pour, over the step
	frozen  [][3]float64 // strain of each triangle at which it has no stress
	rules   []rule
	base    float64   // stiffness of the base, N/m³
	slid    []float64 // of each node over the base
}

// What is kept of the stiffness of the base along a slide, so that a slab that slides
// as a whole still has a place: the drag grows by a thousandth in a millimetre, and by
// next to nothing where there is no drag.
const (
	keptDrag = 1.0   // of the drag, 1/m
	keptBase = 100.0 // N/m³
)

// force sets r to what is out of balance at u, and returns the size of the largest
// force met at a node.
func (b *balance) force(u, r []float64) (largest float64) {
	clear(r)
	for t, v := range b.node {
		e := b.modulus[b.pour[t]]
		if e == 0 {
			continue
		}
		strain := sub3(b.strainIn(t, u), b.frozen[t])
		s := stressOf(b.plane, e*b.thick[t]*b.sheet[t], strain)
		g := &b.grad[t]
		for i, n := range v {
			fx, fy := g[i]*s[0]+g[3+i]*s[2], g[3+i]*s[1]+g[i]*s[2]
			r[2*n] += fx
			r[2*n+1] += fy
			largest = max(largest, math.Abs(fx), math.Abs(fy))
		}
	}
	for k := range b.seams {
		s := &b.seams[k]
		if !b.rules[k].alive {
			continue
		}
		p := b.rules[k].answer(s.move(u))
		fx := s.area * (p.across*s.normal[0] - p.along*s.normal[1])
		fy := s.area * (p.across*s.normal[1] + p.along*s.normal[0])
		r[2*s.first] -= fx
		r[2*s.first+1] -= fy
		if s.second >= 0 {
			r[2*s.second] += fx
			r[2*s.second+1] += fy
		}
		largest = max(largest, math.Abs(fx), math.Abs(fy))
	}
	for n := range b.nodes {
		fx, fy, _ := b.drags(n, u)
		r[2*n] += fx
		r[2*n+1] += fy
	}
	return largest
}

// drags returns the force of the base on a node and its growth xx, xy, yy.
func (b *balance) drags(n int, u []float64) (fx, fy float64, growth [3]float64) {
	k := b.base * b.bed[n]
	ex, ey := u[2*n]-b.slid[2*n], u[2*n+1]-b.slid[2*n+1]
	far := math.Sqrt(ex*ex + ey*ey)
	limit := b.drag[n]
	if k*far <= limit {
		return k * ex, k * ey, [3]float64{k, 0, k}
	}
	nx, ny := ex/far, ey/far
	rest := keptDrag*limit + keptBase*b.bed[n]
	size := limit + rest*(far-limit/k)
	side := size / far
	return size * nx, size * ny, [3]float64{side*ny*ny + rest*nx*nx, (rest - side) * nx * ny, side*nx*nx + rest*ny*ny}
}

// stiffen fills the matrix at u.
func (b *balance) stiffen(u []float64) {
	s := b.system
	s.setModuli(b.modulus)
	copy(s.matrix.Value, s.sheet)
	first := len(b.tri)
	var ke [16]float64
	for k := range b.seams {
		seam := &b.seams[k]
		if !b.rules[k].alive {
			continue
		}
		p := b.rules[k].answer(seam.move(u))
		nx, ny := seam.normal[0], seam.normal[1]
		c, a := p.acrossGrowth*seam.area, p.alongGrowth*seam.area
		block := [2][2]float64{{c*nx*nx + a*ny*ny, (c - a) * nx * ny}, {(c - a) * nx * ny, c*ny*ny + a*nx*nx}}
		if seam.second < 0 {
			s.matrix.AddElement(first+k, []float64{block[0][0], block[0][1], block[1][0], block[1][1]})
			continue
		}
		for i := range 2 {
			for j := range 2 {
				ke[i*4+j], ke[(2+i)*4+2+j] = block[i][j], block[i][j]
				ke[i*4+2+j], ke[(2+i)*4+j] = -block[i][j], -block[i][j]
			}
		}
		s.matrix.AddElement(first+k, ke[:])
	}
	first += len(b.seams)
	for n := range b.nodes {
		_, _, g := b.drags(n, u)
		s.matrix.AddElement(first+n, []float64{g[0], g[1], g[1], g[2]})
	}
}

const rounds = 60 // of Newton's method before a search gives up

// solve starts from u and changes it to the state of balance. If that is not found, u
// is the nearest to it that was met.
func (b *balance) solve(u []float64) (count int, err error) {
	r, step, trial := make([]float64, len(u)), make([]float64, len(u)), make([]float64, len(u))
	scale := b.force(u, r)
	for count = 0; count < rounds; count++ {
		size := largestOf(r)
		if !(size < math.Inf(1)) {
			return count, b.unsettled(r, 1, fmt.Errorf("a force is not a number"))
		}
		if size <= b.set.Settled*scale || scale == 0 {
			return count, nil
		}
		b.stiffen(u)
		if err := b.system.factorise(b.set.Workers); err != nil {
			return count, b.unsettled(r, size/scale, err)
		}
		for i, v := range r {
			step[i] = -v
		}
		b.system.factor.SolveTo(step, step)
		scale = max(scale, b.along(u, step, trial, r))
		copy(u, trial)
	}
	if size := largestOf(r); size > 10*b.set.Settled*scale {
		return count, b.unsettled(r, size/scale, nil)
	}
	return count, nil
}

// along looks for the part of the step at which the force along it vanishes, sets
// trial and r there, and returns the largest force.
func (b *balance) along(u, step, trial, r []float64) (scale float64) {
	at := func(part float64) float64 {
		for i, d := range step {
			trial[i] = u[i] + part*d
		}
		scale = b.force(trial, r)
		return dot(r, step)
	}
	start := dot(r, step) // negative: the step goes down
	low, slopeLow, part := 0.0, start, 1.0
	slope := at(1)
	if math.Abs(slope) <= 0.5*math.Abs(start) || slope < 0 && slope > start {
		return scale
	}
	high, slopeHigh := 1.0, slope
	for range 12 {
		part = low - slopeLow*(high-low)/(slopeHigh-slopeLow)
		part = min(max(part, low+0.05*(high-low)), high-0.05*(high-low))
		slope = at(part)
		if math.Abs(slope) <= 0.2*math.Abs(start) {
			break
		}
		if slope < 0 {
			low, slopeLow = part, slope
		} else {
			high, slopeHigh = part, slope
		}
	}
	return scale
}

// unsettled names what is furthest from balance.
func (b *balance) unsettled(r []float64, left float64, why error) *NotSettled {
	worst := 0
	for i := range r {
		if math.Abs(r[i]) > math.Abs(r[worst]) || math.IsNaN(r[i]) {
			worst = i
		}
	}
	n := int32(worst / 2)
	e := &NotSettled{What: "the base", X: b.x[n], Y: b.y[n], Left: left, Why: why}
	for k := range b.seams {
		if s := &b.seams[k]; s.first == n || s.second == n {
			e.What, e.line = "a line", s.line
			break
		}
	}
	return e
}

func dot(a, b []float64) (sum float64) {
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}

func largestOf(v []float64) (most float64) {
	for _, x := range v {
		if math.IsNaN(x) {
			return math.Inf(1)
		}
		most = max(most, math.Abs(x))
	}
	return most
}
