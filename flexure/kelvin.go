package flexure

import (
	"math"
	"math/cmplx"
)

// kelvin returns the Kelvin functions of the second kind and their derivatives,
// ker x + i kei x = K0(x e^(iπ/4)), for x > 0. The integral of exp(-z cosh t) is
// taken by the trapezoidal rule, whose error falls faster than any power of the
// step for this integrand.
func kelvin(x float64) (ker, kei, kerPrime, keiPrime float64) {
	const step = 1.0 / 64
	turn := cmplx.Exp(complex(0, math.Pi/4))
	z := complex(x, 0) * turn
	k0 := cmplx.Exp(-z) / 2
	k1 := k0
	for i := 1; ; i++ {
		c := math.Cosh(float64(i) * step)
		if x*math.Sqrt2/2*(c-1) > 45 || i > 4096 {
			break
		}
		e := cmplx.Exp(-z * complex(c, 0))
		k0 += e
		k1 += e * complex(c, 0)
	}
	k0 *= step
	k1 *= step
	d := -turn * k1 // dK0/dx
	return real(k0), imag(k0), real(d), imag(d)
}

// PointDeflection returns the deflection at a distance r from a point load on an
// unbounded slab, as a share of P/(k l²): -kei(r/l)/(2π), 1/8 under the load.
//
//	distance   r/l, 0 up   [–]
//
// It turns negative (the slab lifts) beyond 3.915 l.
//
// Source: Hertz 1884, Timoshenko and Woinowsky-Krieger, from memory; exact.
func PointDeflection(distance float64) float64 {
	if distance < 1e-9 {
		return 0.125
	}
	_, kei, _, _ := kelvin(distance)
	return -kei / (2 * math.Pi)
}

// ExactInteriorDeflection returns the deflection under the middle of a load spread
// evenly over a circle, on an unbounded thin slab.
//
//	load [N]   radius [m]   stiffness   l, see RelativeStiffness [m]   support [N/m³]
//
// Result in m. Source: Timoshenko and Woinowsky-Krieger, from memory; exact.
func ExactInteriorDeflection(load, radius, stiffness, support float64) float64 {
	x := radius / stiffness
	_, _, kerPrime, _ := kelvin(x)
	return load / (math.Pi * radius * radius * support) * (1 + x*kerPrime)
}

// ExactInteriorStress returns the tension on the underside at the same place, by
// thin-plate theory ("ordinary theory": no allowance for thickness).
//
//	load [N]   radius, thickness, stiffness [m]   poisson [–]
//
// Result in Pa. Source: as [ExactInteriorDeflection].
func ExactInteriorStress(load, radius, thickness, stiffness, poisson float64) float64 {
	x := radius / stiffness
	_, _, _, keiPrime := kelvin(x)
	moment := (1 + poisson) * load * keiPrime / (2 * math.Pi * x)
	return 6 * math.Abs(moment) / (thickness * thickness)
}
