package earlyage

import (
	"math"
	"math/rand/v2"
)

// redraw returns new points for the unknowns where the observations point, and the
// logarithm of the density each was drawn with, up to a constant.
//
// What members give for each observation is taken as linear in the unknowns, fitted
// by least squares over the members there are; what the line misses goes to the error
// of the observation. With a wide normal law for each unknown about the middle of its
// range this has a normal law in closed form, from which points within all ranges are
// drawn. It only steers the drawing: weighing the members puts right what the line
// gets wrong. Trial cuts have no line and are left to the weights.
//
// Source: Bayesian linear regression; textbook.
func (m *Members) redraw(readings []reading, seed uint64) (points [][]float64, drawn []float64) {
	n, count := len(m.unknowns), len(m.members)
	precision, pull := make([][]float64, n), make([]float64, n)
	for i := range precision {
		precision[i] = make([]float64, n)
		precision[i][i] = priorPrecision
	}
	for k, r := range readings {
		if r.trial {
			continue
		}
		level, slope, missed := m.line(k)
		weight := 1 / (r.error*r.error/r.count + missed)
		for i := range n {
			for j := range n {
				precision[i][j] += weight * slope[i] * slope[j]
			}
			pull[i] += weight * slope[i] * (r.value - level)
		}
	}
	root := cholesky(precision)
	centre := backward(root, forward(root, pull))
	for i, x := range centre {
		centre[i] = math.Min(math.Max(x, -0.5), 0.5)
	}
	random := rand.New(rand.NewPCG(seed, 0xd1342543de82ef95))
	points, drawn = make([][]float64, count), make([]float64, count)
	for i := range points {
		var x []float64
		x, drawn[i] = m.drawOne(root, centre, random)
		points[i] = make([]float64, n)
		for k, u := range m.unknowns {
			points[i][k] = u.Low + (x[k]+0.5)*(u.High-u.Low)
		}
	}
	return points, drawn
}

// Unknowns are counted from -1/2 to 1/2 over their range here. An even law over it has
// the variance 1/12; twice that reaches into its corners.
const priorPrecision = 6.0

// unit is where in its range a member has an unknown, -1/2 to 1/2.
func (m *Members) unit(b *member, k int) float64 {
	u := m.unknowns[k]
	if u.High <= u.Low {
		return 0
	}
	return (b.values[k]-u.Low)/(u.High-u.Low) - 0.5
}

// line fits what the members give for an observation: level in the middle of all
// ranges, slope by unknown, and the variance of what it misses.
func (m *Members) line(reading int) (level float64, slope []float64, missed float64) {
	n := len(m.unknowns)
	normal := make([][]float64, n+1)
	for i := range normal {
		normal[i] = make([]float64, n+2)
		normal[i][i] = 1e-6 * float64(len(m.members))
	}
	row := make([]float64, n+2)
	fill := func(b *member) {
		for k := range n {
			row[k] = m.unit(b, k)
		}
		row[n], row[n+1] = 1, b.seen[reading]
	}
	for i := range m.members {
		fill(&m.members[i])
		for p := range n + 1 {
			for q := range n + 2 {
				normal[p][q] += row[p] * row[q]
			}
		}
	}
	fit := eliminate(normal)
	for i := range m.members {
		fill(&m.members[i])
		off := row[n+1]
		for k, c := range fit {
			off -= c * row[k]
		}
		missed += off * off / float64(len(m.members))
	}
	return fit[n], fit[:n], missed
}

// drawOne draws a point within all ranges, somewhat wider than the law says so that
// none of its tail is lost. After many tries it is put at the edge of its range.
func (m *Members) drawOne(root [][]float64, centre []float64, random *rand.Rand) (x []float64, logDensity float64) {
	const wider, tries = 1.15, 2000
	z := make([]float64, len(centre))
	for try := 1; ; try++ {
		logDensity = 0
		for k := range z {
			z[k] = random.NormFloat64()
			logDensity -= z[k] * z[k] / 2
		}
		x = backward(root, z)
		inside := true
		for k, u := range m.unknowns {
			x[k] = centre[k] + wider*x[k]
			inside = inside && (u.High <= u.Low || math.Abs(x[k]) <= 0.5)
		}
		if inside || try == tries {
			break
		}
	}
	for k := range x {
		x[k] = math.Min(math.Max(x[k], -0.5), 0.5)
	}
	return x, logDensity
}

// cholesky returns the lower triangle L with L L' = a.
func cholesky(a [][]float64) [][]float64 {
	l := make([][]float64, len(a))
	for i := range a {
		l[i] = make([]float64, len(a))
		for j := 0; j <= i; j++ {
			sum := a[i][j]
			for k := range j {
				sum -= l[i][k] * l[j][k]
			}
			if i == j {
				l[i][i] = math.Sqrt(sum)
				continue
			}
			l[i][j] = sum / l[j][j]
		}
	}
	return l
}

// forward solves L x = b, backward L' x = b.
func forward(l [][]float64, b []float64) []float64 {
	x := make([]float64, len(b))
	for i := range b {
		sum := b[i]
		for k := range i {
			sum -= l[i][k] * x[k]
		}
		x[i] = sum / l[i][i]
	}
	return x
}

func backward(l [][]float64, b []float64) []float64 {
	x := make([]float64, len(b))
	for i := len(b) - 1; i >= 0; i-- {
		sum := b[i]
		for k := i + 1; k < len(b); k++ {
			sum -= l[k][i] * x[k]
		}
		x[i] = sum / l[i][i]
	}
	return x
}
