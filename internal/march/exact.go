package march

import "math"

// HalfSpaceStep returns the value at depth x and time t of a half-space at
// initial throughout whose surface is put to surface at t = 0.
//
//	x m, t s, a diffusivity m2/s
//
// Source: Carslaw and Jaeger, section 2.4 (textbook).
func HalfSpaceStep(x, t, a, initial, surface float64) float64 {
	return surface + (initial-surface)*math.Erf(x/(2*math.Sqrt(a*t)))
}

// HalfSpaceFilm returns the share of the way from the initial to the ambient
// value reached at depth x and time t when a half-space is exposed through a film.
//
//	h film W/m2K, k conductivity W/mK
//
// The product exp*erfc is evaluated by scaledErfc, since the exponent overflows
// after hours of a strong film. Source: Carslaw and Jaeger, section 2.7.
func HalfSpaceFilm(x, t, a, k, h float64) float64 {
	u := x / (2 * math.Sqrt(a*t))
	v := u + h*math.Sqrt(a*t)/k
	return math.Erfc(u) - math.Exp(-u*u)*scaledErfc(v)
}

// scaledErfc is exp(v^2) erfc(v) for v >= 0, by a continued fraction where the
// plain product would overflow.
func scaledErfc(v float64) float64 {
	if v < 5 {
		return math.Exp(v*v) * math.Erfc(v)
	}
	fraction := v
	for n := 40; n >= 1; n-- {
		fraction = v + float64(n)/2/fraction
	}
	return 1 / (fraction * math.Sqrt(math.Pi))
}

// HalfSpaceFlux returns the rise at depth x and time t under a constant flow q
// (W/m2) into a half-space. Source: Carslaw and Jaeger, section 2.9.
func HalfSpaceFlux(x, t, a, k, q float64) float64 {
	u := x / (2 * math.Sqrt(a*t))
	return 2*q/k*math.Sqrt(a*t/math.Pi)*math.Exp(-u*u) - q*x/k*math.Erfc(u)
}

// FilmRoot returns the n-th root (n = 1, 2 ...) of z tan z = biot.
func FilmRoot(biot float64, n int) float64 {
	low := float64(n-1) * math.Pi
	high := low + math.Pi/2
	for range 200 {
		z := (low + high) / 2
		if z*math.Sin(z)*math.Cos(float64(n-1)*math.Pi) < biot*math.Cos(z)*math.Cos(float64(n-1)*math.Pi) {
			low = z
		} else {
			high = z
		}
	}
	return (low + high) / 2
}

// FilmCoefficient returns the coefficient of the series of [SlabFilm] that goes
// with a root.
func FilmCoefficient(root float64) float64 {
	return 4 * math.Sin(root) / (2*root + math.Sin(2*root))
}

// SlabFilm returns the share of the initial excess left in a slab that loses
// through a film on one face and is sealed on the other.
//
//	biot     h L / k, L the full thickness of the one-sided slab
//	fourier  a t / L^2
//	place    x/L measured from the sealed face
//	terms    of the series; 40 for fourier > 0.01
//
// Source: Carslaw and Jaeger, section 3.11; heat transfer handbooks.
func SlabFilm(biot, fourier, place float64, terms int) float64 {
	var sum float64
	for n := 1; n <= terms; n++ {
		z := FilmRoot(biot, n)
		sum += FilmCoefficient(z) * math.Exp(-z*z*fourier) * math.Cos(z*place)
	}
	return sum
}

// DampingDepth returns the depth at which a wave of this period has fallen to 1/e.
// Source: Carslaw and Jaeger, section 2.6.
func DampingDepth(a, period float64) float64 { return math.Sqrt(a * period / math.Pi) }

// WaveShare returns the amplitude at depth z as a share of that at the surface.
func WaveShare(z, a, period float64) float64 { return math.Exp(-z / DampingDepth(a, period)) }

// WaveLag returns by how many seconds the wave at depth z is late.
func WaveLag(z, a, period float64) float64 {
	return z / DampingDepth(a, period) * period / (2 * math.Pi)
}

// Wave returns the value at depth z and time t under a surface that swings as
// mean + amplitude sin(2 pi t / period), long after the start.
func Wave(z, t, a, period, mean, amplitude float64) float64 {
	z /= DampingDepth(a, period)
	return mean + amplitude*math.Exp(-z)*math.Sin(2*math.Pi*t/period-z)
}

// Contact returns the value at the face between two half-spaces put together,
// each with k, density times capacity (rhoC) and value. Source: Carslaw and
// Jaeger; the face keeps this value as long as both are thick.
func Contact(k1, rhoC1, value1, k2, rhoC2, value2 float64) float64 {
	e1, e2 := math.Sqrt(k1*rhoC1), math.Sqrt(k2*rhoC2)
	return (e1*value1 + e2*value2) / (e1 + e2)
}

// SlabDecayingSource returns the rise at x in a slab 0..length, faces held at
// zero, that releases q0 exp(-decay t) W/m3. A model of the heat of hydration.
// Source: Carslaw and Jaeger, section 3.14 (type); series derived anew.
func SlabDecayingSource(x, t, length, k, rhoC, q0, decay float64) float64 {
	var sum float64
	for n := 1; n < 400; n += 2 {
		w := float64(n) * math.Pi / length
		rate := k / rhoC * w * w
		sum += 4 * q0 / (float64(n) * math.Pi * rhoC) * math.Sin(w*x) *
			(math.Exp(-decay*t) - math.Exp(-rate*t)) / (rate - decay)
	}
	return sum
}

// SteadySourceRise returns the rise in the middle of a slab with both faces held
// and a steady source q (W/m3). Textbook.
func SteadySourceRise(q, length, k float64) float64 { return q * length * length / (8 * k) }

// MeanLoss returns the share of the excess lost from a layer that dries from one
// face, held, with a constant diffusivity d.
//
// Source: Crank, The Mathematics of Diffusion.
func MeanLoss(d, length, t float64) float64 {
	left := 0.0
	for n := 0; n < 200; n++ {
		m := float64(2*n+1) * math.Pi
		left += 8 / (m * m) * math.Exp(-m*m*d*t/(4*length*length))
	}
	return 1 - left
}
