package concrete

// MC2010 returns the mix's strength model of fib Model Code 2010.
func (m Mix) MC2010() MC2010 {
	factor := 1.0
	if a, ok := aggregateOf(m.AggregateKind); ok {
		factor = a.Modulus
	}
	return NewMC2010(m.Characteristic, m.CementStrength, factor)
}

// ACI209 returns the mix's strength model of ACI 209R-92, moist cured: type III for a
// rapid cement, type I for others. The code has no slower row.
func (m Mix) ACI209() ACI209 {
	row := "I moist"
	if m.Class == Rapid {
		row = "III moist"
	}
	model := NewACI209(MeanStrengthEN(m.Characteristic), row)
	model.Density = m.Density()
	return model
}

// AS3600 returns the mix's strength model of AS 3600:2018.
func (m Mix) AS3600() AS3600 {
	model := NewAS3600(m.Characteristic, m.Class)
	model.Density = m.Density()
	return model
}

// StrengthModels returns the mix's strength by every code, the first the one used
// unless another is chosen.
func (m Mix) StrengthModels() []StrengthModel {
	return []StrengthModel{m.EN1992(), m.MC2010(), m.ACI209(), m.AS3600()}
}

// typeUS returns the cement type of US models nearest to the mix's cement: III for a
// rapid one, II for a slow one, else I.
func (m Mix) typeUS() string {
	switch m.Class {
	case Rapid:
		return "III"
	case Slow:
		return "II"
	}
	return "I"
}

// MixACI returns what ACI 209R asks of the mix, for so many days of moist curing.
func (m Mix) MixACI(curing float64) MixACI {
	return MixACI{Curing: curing, Slump: m.Slump, Fines: 100 * m.FinesShare, Cement: m.BinderContent, Air: 100 * m.Air}
}

// B3 returns the mix's model B3 as a slab; curing 1.0 in water or humid, 1.2 sealed.
func (m Mix) B3(curing float64) B3 {
	return B3{MixB3{Mean28: MeanStrengthEN(m.Characteristic), Cement: m.BinderContent, Water: m.Water,
		AggregateCement: m.Aggregate / m.BinderContent, Type: m.typeUS(), Curing: curing, Shape: 1}}
}

// B4 returns the mix's model B4 as a slab, with the constants of ordinary cement.
func (m Mix) B4() B4 {
	return B4{Mean28: MeanStrengthEN(m.Characteristic), Cement: m.BinderContent, WaterCement: m.WaterBinder(),
		AggregateCement: m.Aggregate / m.BinderContent, Density: m.Density(), Shape: 1}
}

// ShrinkageModels returns the mix's shrinkage by every model, the first the one used
// unless another is chosen.
//
//	curing   moist curing [d]
//	final    final drying basic shrinkage of AS 3600, 800e-6 to 1000e-6
func (m Mix) ShrinkageModels(curing, final float64) []ShrinkageModel {
	mean := MeanStrengthEN(m.Characteristic)
	return []ShrinkageModel{
		ShrinkageEN{mean, m.Class}, ShrinkageMC{m.MC2010()}, ShrinkageACI{m.MixACI(curing)},
		GL2000{mean, m.typeUS()}, m.B3(1), m.B4(), DeformationAS{AS3600: m.AS3600(), Final: final},
	}
}

// CreepModels returns the mix's creep by every model, as [Mix.ShrinkageModels].
func (m Mix) CreepModels(curing, final float64) []CreepModel {
	mean := MeanStrengthEN(m.Characteristic)
	return []CreepModel{
		CreepEN{m.EN1992()}, CreepMC{m.MC2010()}, CreepACI{m.MixACI(curing), m.ACI209()},
		GL2000{mean, m.typeUS()}, m.B3(1), m.B4(), DeformationAS{AS3600: m.AS3600(), Final: final},
	}
}
