package restraint

import (
	"math"

	"slabwright/plan"
)

// Quick returns a model to replay as one of many members of a sample: coarser
// triangles (some 600 to 1200 points on a slab of 350 m²), fewer halvings of a step
// and a looser balance, for the same physics. BenchmarkQuick tells what it costs,
// TestQuickAgainstFine how near its answers lie to those of the fine model.
//
// Settings that the caller made coarser already stay as they are.
func (m Model) Quick() Model {
	s := m.Settings.filled()
	size := math.Min(1.2, math.Max(0.45, math.Sqrt(m.area()/240)))
	s.Size = math.Max(s.Size, size)
	s.Fine = math.Min(s.Size, math.Max(s.Fine, math.Min(0.35, size/3)))
	s.Growth = math.Max(s.Growth, 1.6)
	s.Settled = math.Max(s.Settled, 1e-3)
	s.Over = math.Max(s.Over, 1.2)
	s.Miss = math.Max(s.Miss, 1)
	s.Halvings = 1
	m.Settings = s
	return m
}

// area returns the plan area of a slab without its openings, m².
func (m Model) area() float64 {
	sum := plan.Ring(m.Slab.Outline).Area()
	for _, f := range m.Slab.Fixtures {
		if f.Opening && len(f.Shape) > 2 {
			sum -= plan.Ring(f.Shape).Area()
		}
	}
	return math.Max(sum, 0)
}

// UsualHours returns hours to follow a slab over: every two to the end of the third
// day, then each a quarter later than the one before.
func UsualHours(until float64) []float64 {
	var out []float64
	for h := 0.0; h < math.Min(until, 72.5); h += 2 {
		out = append(out, h)
	}
	for h := 96.0; h < until; h *= 1.25 {
		out = append(out, h)
	}
	return append(out, until)
}
