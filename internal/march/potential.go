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
	return func(u float64) (float64, float64) {
		x := (u - low) / du
		switch {
		case x <= 0:
			return d[0] * (u - low), d[0]
		case x >= float64(n):
			return p[n] + d[n]*(u-high), d[n]
		}
		i := int(math.Min(x, float64(n-1)))
		s := x - float64(i)
		rise := p[i+1] - p[i]
		a, b := du*d[i], du*d[i+1]
		c2, c3 := 3*rise-2*a-b, a+b-2*rise
		return p[i] + s*(a+s*(c2+s*c3)), (a + s*(2*c2+3*s*c3)) / du
	}
}
