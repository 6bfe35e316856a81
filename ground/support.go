package ground

import (
	"errors"
	"fmt"
)

// Layer is one layer under the slab, from the top down. The last one goes on for
// as deep as the model looks.
type Layer struct {
	Soil      Soil
	Thickness float64 // [m]
}

// Support is what the slab lies on, in plain numbers.
type Support struct {
	Base     string   // what the slab slides on: a name of [Bases]
	Friction Range    // coefficient [-]
	Modulus  float64  // of subgrade reaction on top of the base [MN/m³]
	Layers   []Layer  // base, fill, ground: heat
	Sheet    bool     // a vapour retarder right under the slab: it cannot dry downwards
	Voids    []string // where support is known to be lost, in the walker's words
}

// DefaultSupport returns 150 mm of crushed rock on moist clay with a modulus of 40
// MN/m³ (CBR about 6), to be shown as a default wherever it is used.
func DefaultSupport() Support {
	f, _ := FrictionOf("crushed stone")
	base, _ := SoilOf("crushed rock base")
	clay, _ := SoilOf("moist clay")
	return Support{Base: f.Base, Friction: Range{f.Value, f.Low, f.High}, Modulus: 40,
		Layers: []Layer{{base, 0.15}, {clay, 2}}}
}

// Check returns everything in the support that cannot be right, all at once, or nil.
func (s Support) Check() error {
	var faults []error
	add := func(format string, args ...any) { faults = append(faults, fmt.Errorf(format, args...)) }
	if !(s.Modulus >= 3 && s.Modulus <= 400) {
		add("support, modulus of subgrade reaction: %g MN/m³ is outside 3 to 400 MN/m³; is it in pci (1 pci = 0.271 MN/m³)?", s.Modulus)
	}
	if !(s.Friction.Low >= 0 && s.Friction.Low <= s.Friction.Value && s.Friction.Value <= s.Friction.High && s.Friction.High <= 10) {
		add("support, friction: %g (%g to %g) must rise from low to high within 0 to 10", s.Friction.Value, s.Friction.Low, s.Friction.High)
	}
	if len(s.Layers) == 0 {
		add("support, layers: none given; give at least the ground under the slab")
	}
	for i, l := range s.Layers {
		if !(l.Thickness > 0) {
			add("support, layer %d (%s): thickness %g m must be more than 0", i+1, l.Soil.Name, l.Thickness)
		}
		if !(l.Soil.Conductivity.Value > 0 && l.Soil.HeatCapacity() > 0) {
			add("support, layer %d (%s): conductivity, density and specific heat must be more than 0", i+1, l.Soil.Name)
		}
	}
	return errors.Join(faults...)
}
