package concrete

// Member is the piece of concrete that dries.
type Member struct {
	Humidity      float64 // of the air around it, 0.40 to 0.99 as a fraction
	VolumeSurface float64 // volume over drying surface [mm]
	DryingFrom    float64 // age at which drying starts [d]
}

// NotionalSize returns h0 (also th), mm: twice the volume over the drying surface.
func (m Member) NotionalSize() float64 { return 2 * m.VolumeSurface }

// SlabDryingFromTop returns the member for a slab that dries from one face: its
// volume over surface is the whole thickness, its notional size twice that.
// Halving it, as for a wall drying from two faces, makes it dry four times as fast.
//
//	thickness    [m]
//	humidity     of the air, fraction
//	dryingFrom   age when covers and curing come off [d]
func SlabDryingFromTop(thickness, humidity, dryingFrom float64) Member {
	return Member{Humidity: humidity, VolumeSurface: thickness * 1000, DryingFrom: dryingFrom}
}

// SlabDryingBothFaces returns the member for a slab that dries from two faces.
func SlabDryingBothFaces(thickness, humidity, dryingFrom float64) Member {
	return Member{Humidity: humidity, VolumeSurface: thickness * 1000 / 2, DryingFrom: dryingFrom}
}

// ShrinkageModel is how one code lets concrete shrink. Strains are plain numbers,
// positive when the concrete gets shorter.
type ShrinkageModel interface {
	Code() string
	// Autogenous returns the shrinkage at an age in days of concrete that neither
	// gains nor loses water; nothing in models that do not part it from drying.
	Autogenous(age float64) float64
	// Drying returns the mean shrinkage by drying of a member at an age in days.
	Drying(member Member, age float64) float64
}

// TotalShrinkage returns autogenous and drying shrinkage of a member at an age in
// days.
func TotalShrinkage(model ShrinkageModel, member Member, age float64) float64 {
	return model.Autogenous(age) + model.Drying(member, age)
}

// CreepModel is how one code lets concrete creep under a steady stress of up to
// about 0.4 of its strength.
type CreepModel interface {
	Code() string
	// Coefficient returns the creep strain since loading over the elastic strain the
	// code refers it to (its own 28-day or loading-age modulus).
	Coefficient(member Member, loaded, age float64) float64
	// Compliance returns strain per stress, elastic and creep, 1/MPa.
	Compliance(member Member, loaded, age float64) float64
}
