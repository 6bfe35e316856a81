package march

import "math"

// Integrated returns the potential of a diffusivity over [low, high], tabulated
// at n equal steps by Simpson's rule and joined by cubics that match both the
// potential and the diffusivity at the points. Outside the range the diffusivity
// of the end is kept.
func Integrated(diffusivity func(u float64) float64, low, high float64, n int) Potential {
	du := (high - low) / float64(n)
	d := make([]float64, n+1)
	p := make([]float64, n+1)
	for i := range d {
		d[i] = diffusivity(low + float64(i)*du)
		if i > 0 {
			p[i] = p[i-1] + du/6*(d[i-1]+4*diffusivity(low+(float64(i)-0.5)*du)+d[i])
		}
	}
	table := NewTable(func(u float64) (float64, float64) {
		i := int(math.Round((u - low) / du))
		return p[i], d[i]
	}, low, high, n)
	return table.At
}
