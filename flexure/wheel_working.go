package flexure

import (
	"fmt"
	"math"

	"slabwright/source"
	"slabwright/working"
)

// WheelInput is what [WheelWorking] needs.
type WheelInput struct {
	ID        string  // of the sheet
	Title     string  // such as "Fork lift, front axle"
	Load      float64 // on one contact, N
	Radius    float64 // of the circle with the contact's area, m
	Thickness float64 // m
	Modulus   float64 // Pa
	Poisson   float64 // –
	Support   float64 // k, N/m³
	Strength  float64 // flexural tensile strength, Pa; 0 leaves the comparison out
	Transfer  float64 // share of the load that a joint passes on, 0 to 0.5; 0 at a free edge
	Known     map[string]string
}

// Wheel is the outcome of [WheelWorking].
type Wheel struct {
	Stiffness          float64 // l, m
	Interior           float64 // tension underneath, Pa
	Edge               float64 // tension underneath along the edge, Pa
	Corner             float64 // tension on top across the corner, Pa
	CornerAt           float64 // from the corner, m
	InteriorDeflection float64 // m
	EdgeDeflection     float64 // m
	CornerDeflection   float64 // m
}

// WheelStresses returns the stresses and deflections of one wheel at the three
// places, edge and corner eased by the share of load passed on.
func WheelStresses(in WheelInput) Wheel {
	l := RelativeStiffness(in.Modulus, in.Thickness, in.Poisson, in.Support)
	left := 1 - in.Transfer
	return Wheel{
		Stiffness:          l,
		Interior:           InteriorStress(in.Load, EquivalentRadius(in.Radius, in.Thickness), in.Thickness, l, in.Poisson),
		Edge:               left * EdgeStress(Circle, in.Load, in.Radius, in.Modulus, in.Thickness, in.Poisson, in.Support),
		Corner:             left * CornerStress(in.Load, in.Radius, in.Thickness, l),
		CornerAt:           CornerStressDistance(in.Radius, l),
		InteriorDeflection: InteriorDeflection(in.Load, in.Radius, l, in.Support),
		EdgeDeflection:     left * EdgeDeflection(Circle, in.Load, in.Radius, in.Modulus, in.Thickness, in.Poisson, in.Support),
		CornerDeflection:   left * CornerDeflectionIoannides(in.Load, in.Radius, l, in.Support),
	}
}

// Check returns what is wrong with the input, in the engineer's words; nil when it
// can be worked.
func (in WheelInput) Check() []error {
	b := bounds{}
	b.need("load", in.Load, 1, 1e8, "N")
	b.need("contact radius", in.Radius, 0.005, 3, "m")
	b.slab(in.Thickness, in.Modulus, in.Poisson, in.Support)
	b.need("strength", in.Strength, 0, 1e8, "Pa")
	b.need("share of load passed on", in.Transfer, 0, 0.5, "")
	if l := RelativeStiffness(in.Modulus, in.Thickness, in.Poisson, in.Support); in.Radius > 0.5*l {
		b = append(b, fmt.Errorf("contact radius %g m is above half the radius of relative stiffness, %.3f m: the forms for a wheel do not hold; treat it as a spread load", in.Radius, l))
	}
	return b
}

// bounds collects what lies outside the range that can be worked.
type bounds []error

func (b *bounds) need(name string, v, low, high float64, unit string) {
	if !(v >= low && v <= high) {
		*b = append(*b, fmt.Errorf("%s is %g %s; %g to %g %s can be worked", name, v, unit, low, high, unit))
	}
}

func (b *bounds) slab(thickness, modulus, poisson, support float64) {
	b.need("thickness", thickness, 0.04, 2, "m")
	b.need("modulus", modulus, 1e6, 1e11, "Pa")
	b.need("Poisson's ratio", poisson, 0, 0.45, "")
	b.need("support of the ground", support, 1e5, 1e10, "N/m³")
}

// put makes inputs with how each is known.
func put(known map[string]string, symbol string, v float64, unit, what string) working.Input {
	i := working.In(symbol, v, unit, what)
	i.Known = known[symbol]
	return i
}

// stiffnessLine is the line that finds l.
func stiffnessLine(known map[string]string, modulus, thickness, poisson, support, l float64) working.Line {
	return working.New("l", "Radius of relative stiffness", "(E · h³ / (12 · (1 − ν²) · k))^(1/4)", l, "m", source.Cite("westergaard1926", ""),
		put(known, "E", modulus/1e6, "MPa", "modulus"), put(known, "h", thickness, "m", "thickness"),
		put(known, "ν", poisson, "–", "Poisson's ratio"), put(known, "k", support/1e6, "MPa/m", "support of the ground"))
}

// WheelWorking returns the calculation of [WheelStresses] line by line, each with
// another published form beside it. The input must pass [WheelInput.Check]; it
// panics otherwise.
func WheelWorking(in WheelInput) working.Sheet {
	if bad := in.Check(); len(bad) > 0 {
		panic("flexure: WheelWorking of an unchecked input: " + bad[0].Error())
	}
	w := WheelStresses(in)
	s := working.Sheet{ID: in.ID, Title: in.Title, Basis: []string{
		"The slab rests on the ground everywhere; curl that lifts edges or corners makes edge and corner worse.",
		"Edge: whole circle touching the edge. Corner: circle touching both edges.",
	}}
	b := EquivalentRadius(in.Radius, in.Thickness)
	radius := source.Cite("westergaard1926", "equivalent radius").As(source.Seen)
	a, h := put(in.Known, "a", in.Radius, "m", "contact radius"), put(in.Known, "h", in.Thickness, "m", "thickness")
	formula := "sqrt(1.6 · a² + h²) − 0.675 · h"
	if in.Radius >= 1.724*in.Thickness {
		formula = "a"
	}
	s.Add(stiffnessLine(in.Known, in.Modulus, in.Thickness, in.Poisson, in.Support, w.Stiffness),
		working.New("b", "Equivalent radius, for the interior stress", formula, b, "m", radius, a, h))
	s.Add(in.stressLines(w, b)...)
	s.Add(in.deflectionLines(w)...)
	return s
}

func (in WheelInput) stressLines(w Wheel, b float64) []working.Line {
	ioannides, westergaard := source.Cite("ioannides1985", ""), source.Cite("westergaard1948", "edge")
	load, h, nu := put(in.Known, "P", in.Load/1e6, "MN", "load"), put(in.Known, "h", in.Thickness, "m", "thickness"), put(in.Known, "ν", in.Poisson, "–", "Poisson's ratio")
	l, a := working.In("l", w.Stiffness, "m", "radius of relative stiffness"), put(in.Known, "a", in.Radius, "m", "contact radius")
	left := put(in.Known, "T", in.Transfer, "–", "share passed on by the joint")
	share := 1 - in.Transfer
	lines := []working.Line{
		working.New("σ_i", "Wheel in the interior: tension underneath", "3 · (1 + ν) · P / (2 · π · h²) · (ln(l / b) + 0.6159)", w.Interior/1e6, "MPa", ioannides,
			load, h, nu, l, working.In("b", b, "m", "equivalent radius")).
			Beside("exact thin plate, by Kelvin functions", ExactInteriorStress(in.Load, in.Radius, in.Thickness, w.Stiffness, in.Poisson)/1e6,
				source.Cite("timoshenko", "elastic foundation"), "Thin-plate theory has no allowance for thickness under a small contact."),
		working.New("σ_e", "Wheel at the edge: tension underneath", "(1 − T) · 3 · (1 + ν) · P / (π · (3 + ν) · h²) · (ln(E · h³ / (100 · k · a⁴)) + 1.84 − 4 · ν / 3 + (1 − ν) / 2 + 1.18 · (1 + 2 · ν) · a / l)",
			w.Edge/1e6, "MPa", westergaard, load, h, nu, l, a, left, put(in.Known, "E", in.Modulus/1e6, "MPa", "modulus"), put(in.Known, "k", in.Support/1e6, "MPa/m", "support")).
			Beside("semicircle with its diameter on the edge", share*EdgeStress(Semicircle, in.Load, in.Radius, in.Modulus, in.Thickness, in.Poisson, in.Support)/1e6,
				westergaard, "A half circle of the same radius puts the whole load nearer to the edge."),
		working.New("σ_c", "Wheel at the corner: tension on top", "(1 − T) · 3 · P / h² · (1 − (a · sqrt(2) / l)^0.6)", w.Corner/1e6, "MPa", source.Cite("westergaard1926", "corner"),
			load, h, l, a, left).
			Beside("regression on plate solutions", share*CornerStressIoannides(in.Load, in.Radius, in.Thickness, w.Stiffness)/1e6, ioannides, ""),
		working.New("x_1", "Where that corner stress is greatest, from the corner", "2 · sqrt(a · sqrt(2) · l)", w.CornerAt, "m", source.Cite("westergaard1926", "corner"), a, l),
	}
	if in.Strength > 0 {
		worst := math.Max(w.Interior, math.Max(w.Edge, w.Corner))
		use := working.New("σ/f", "Greatest of the three over the flexural strength", "max(σ_i, σ_e, σ_c) / f", worst/in.Strength, "–", source.Cite("mechanics", ""),
			working.In("σ_i", w.Interior/1e6, "MPa", "interior"), working.In("σ_e", w.Edge/1e6, "MPa", "edge"), working.In("σ_c", w.Corner/1e6, "MPa", "corner"),
			put(in.Known, "f", in.Strength/1e6, "MPa", "flexural strength"))
		lines = append(lines, judged(use, worst < in.Strength))
	}
	return lines
}

func (in WheelInput) deflectionLines(w Wheel) []working.Line {
	ioannides := source.Cite("ioannides1985", "")
	load, k := put(in.Known, "P", in.Load/1e6, "MN", "load"), put(in.Known, "k", in.Support/1e6, "MPa/m", "support")
	l, a := working.In("l", w.Stiffness, "m", "radius of relative stiffness"), put(in.Known, "a", in.Radius, "m", "contact radius")
	left := put(in.Known, "T", in.Transfer, "–", "share passed on by the joint")
	nu := put(in.Known, "ν", in.Poisson, "–", "Poisson's ratio")
	share := 1 - in.Transfer
	return []working.Line{
		working.New("w_i", "Deflection in the interior", "1000 · P / (8 · k · l²) · (1 + (ln(a / (2 · l)) − 0.673) · (a / l)² / (2 · π))", w.InteriorDeflection*1e3, "mm", ioannides, load, k, l, a).
			Beside("exact thin plate", ExactInteriorDeflection(in.Load, in.Radius, w.Stiffness, in.Support)*1e3, source.Cite("timoshenko", "elastic foundation"), ""),
		working.New("w_e", "Deflection of the edge", "(1 − T) · 1000 · P · sqrt(2 + 1.2 · ν) / sqrt(E · h³ · k) · (1 − (0.76 + 0.4 · ν) · a / l)", w.EdgeDeflection*1e3, "mm", source.Cite("westergaard1948", "edge"),
			load, k, l, a, nu, left, put(in.Known, "E", in.Modulus/1e6, "MPa", "modulus"), put(in.Known, "h", in.Thickness, "m", "thickness")).
			Beside("semicircle", share*EdgeDeflection(Semicircle, in.Load, in.Radius, in.Modulus, in.Thickness, in.Poisson, in.Support)*1e3, source.Cite("westergaard1948", "edge"), ""),
		working.New("w_c", "Deflection of the corner", "(1 − T) · 1000 · P / (k · l²) · (1.205 − 0.69 · 1.772 · a / l)", w.CornerDeflection*1e3, "mm", ioannides, load, k, l, a, left).
			Beside("Westergaard, about 10 % low", share*CornerDeflection(in.Load, in.Radius, w.Stiffness, in.Support)*1e3, source.Cite("westergaard1926", "corner"), ""),
	}
}

// judged sets the verdict of a line.
func judged(l working.Line, passes bool) working.Line {
	l.Verdict = "fail"
	if passes {
		l.Verdict = "pass"
	}
	return l
}
