package concrete

import (
	"math"

	"slabwright/source"
)

// memberIn reads the member of a row, its size as h0 or V/S.
func memberIn(in source.Inputs) Member {
	return Member{Humidity: in.Num("RH") / 100, VolumeSurface: in.NumOr("VS", in.NumOr("h0", 0)/2),
		DryingFrom: in.NumOr("ts", in.NumOr("tc", 0))}
}

func shrinkageEN(in source.Inputs) ShrinkageEN {
	return ShrinkageEN{in.Num("fcm"), CementClass(in.Word("class"))}
}

func creepEN(in source.Inputs) CreepEN {
	return CreepEN{EN1992{Mean28: in.Num("fcm"), Class: CementClass(in.Word("class")), AggregateFactor: 1}}
}

func adjustedEN(in source.Inputs) float64 {
	return AdjustedLoadingAge(in.Num("t0"), classConstantEN(CementClass(in.Word("class")), "creepage"))
}

func adjustedMC(in source.Inputs) float64 {
	return AdjustedLoadingAge(in.Num("t0"), constantMC(in.Word("cement"), "creepage"))
}

// creepPartEN answers the parts of φ0 the worked example prints.
func creepPartEN(in source.Inputs) float64 {
	fcm, m, t0 := in.Num("fcm"), memberIn(in), adjustedEN(in)
	phi0 := NotionalCreepEN(fcm, m.Humidity, m.NotionalSize(), t0)
	strength, age := 16.8/math.Sqrt(fcm), 1/(0.1+math.Pow(t0, 0.2))
	return map[string]float64{
		"a1": math.Pow(35/fcm, 0.7), "a2": math.Pow(35/fcm, 0.2), "a3": math.Sqrt(35 / fcm),
		"phi0": phi0, "beta_fcm": strength, "beta_t0": age, "phiRH": phi0 / strength / age,
	}[in.Word("of")]
}

const micro = 1e6

var creepENQuantities = map[string]source.Func{
	"en shrinkage basic drying": func(in source.Inputs) float64 {
		return micro * BasicDryingShrinkageEN(in.Num("fcm"), CementClass(in.Word("class")), in.Num("RH")/100)
	},
	"en shrinkage basic drying permille": func(in source.Inputs) float64 {
		return 1e3 * BasicDryingShrinkageEN(in.Num("fcm"), CementClass(in.Word("class")), in.Num("RH")/100)
	},
	"en shrinkage size factor": func(in source.Inputs) float64 { return SizeFactorEN(in.Num("h0")) },
	"en shrinkage drying": func(in source.Inputs) float64 {
		return micro * shrinkageEN(in).Drying(memberIn(in), in.Num("t"))
	},
	"en shrinkage autogenous": func(in source.Inputs) float64 { return micro * shrinkageEN(in).Autogenous(in.Num("t")) },
	"en shrinkage total": func(in source.Inputs) float64 {
		return micro * TotalShrinkage(shrinkageEN(in), memberIn(in), in.Num("t"))
	},
	"en creep": func(in source.Inputs) float64 {
		return creepEN(in).Coefficient(memberIn(in), in.Num("t0"), in.Num("t"))
	},
	"en creep part":         creepPartEN,
	"en creep adjusted age": adjustedEN,
	"en creep notional": func(in source.Inputs) float64 {
		return NotionalCreepEN(in.Num("fcm"), in.Num("RH")/100, in.Num("h0"), adjustedEN(in))
	},
	"relaxation modulus": func(in source.Inputs) float64 {
		return TangentOverSecantEN * enIn(in).Modulus(in.Num("t0"))
	},
	"relaxation": func(in source.Inputs) float64 {
		const steps = 400 // differs from 1500 by less than 0.001
		j := ComplianceOf(CreepEN{enIn(in)}, memberIn(in))
		return Relaxation(j, in.Num("t0"), []float64{in.Num("t")}, steps)[0]
	},
}

var creepMCQuantities = map[string]source.Func{
	"mc shrinkage basic": func(in source.Inputs) float64 { return -micro * ShrinkageMC{mcIn(in)}.Autogenous(in.Num("t")) },
	"mc shrinkage drying": func(in source.Inputs) float64 {
		return -micro * ShrinkageMC{mcIn(in)}.Drying(memberIn(in), in.Num("t"))
	},
	"mc shrinkage total": func(in source.Inputs) float64 {
		return -micro * TotalShrinkage(ShrinkageMC{mcIn(in)}, memberIn(in), in.Num("t"))
	},
	"mc creep adjusted age": adjustedMC,
	"mc creep basic": func(in source.Inputs) float64 {
		return BasicCreepMC(in.Num("fcm"), adjustedMC(in), in.Num("t")-in.Num("t0"))
	},
	"mc creep drying": func(in source.Inputs) float64 {
		return DryingCreepMC(in.Num("fcm"), in.Num("RH")/100, in.Num("h0"), adjustedMC(in), in.Num("t")-in.Num("t0"))
	},
	"mc creep total": func(in source.Inputs) float64 {
		return CreepMC{mcIn(in)}.Coefficient(memberIn(in), in.Num("t0"), in.Num("t"))
	},
}

func mixACI(in source.Inputs) MixACI {
	return MixACI{Curing: in.NumOr("curing", 7), Slump: in.Num("slump"), Fines: in.Num("fines"),
		Cement: in.NumOr("cement", 0), Air: in.Num("air")}
}

var creepACIQuantities = map[string]source.Func{
	"aci shrinkage factor": func(in source.Inputs) float64 {
		return ShrinkageFactorACI(mixACI(in), in.Num("RH")/100, in.Num("VS"))
	},
	"aci shrinkage": func(in source.Inputs) float64 {
		return micro * ShrinkageACI{mixACI(in)}.Drying(memberIn(in), in.Num("drying"))
	},
	"aci creep factor": func(in source.Inputs) float64 {
		return CreepFactorACI(mixACI(in), in.Num("RH")/100, in.Num("VS"), in.Num("loaded"))
	},
	"aci creep": func(in source.Inputs) float64 {
		c := CreepACI{MixACI: mixACI(in)}
		return c.Coefficient(memberIn(in), in.Num("loaded"), in.Num("loaded")+in.Num("days"))
	},
}

var creepGLQuantities = map[string]source.Func{
	"gl shrinkage": func(in source.Inputs) float64 {
		return micro * ShrinkageByGL(in.Num("fcm"), in.Num("k"), in.Num("RH")/100, in.Num("VS"), in.Num("t")-in.Num("tc"))
	},
	"gl creep": func(in source.Inputs) float64 {
		return CreepByGL(in.Num("RH")/100, in.Num("VS"), in.Num("tc"), in.Num("t0"), in.Num("t")-in.Num("t0"))
	},
	"gl modulus": func(in source.Inputs) float64 { return ModulusGL(in.Num("fcm")) },
}

// ofB3 answers a quantity of model B3 from a row.
func ofB3(f func(m B3, member Member, t0, t float64) float64) source.Func {
	return func(in source.Inputs) float64 {
		m := B3{MixB3{Mean28: in.Num("fcm"), Cement: in.Num("c"), Water: in.Num("w"), AggregateCement: in.Num("ac"), Type: "I", Curing: 1, Shape: 1}}
		return f(m, memberIn(in), in.Num("t0"), in.Num("t"))
	}
}

var creepB3Quantities = map[string]source.Func{
	"b3 tau":       ofB3(func(m B3, member Member, _, _ float64) float64 { return m.halfTime(member) }),
	"b3 limit":     ofB3(func(m B3, _ Member, _, _ float64) float64 { return micro * LimitStrainB3(m.MixB3) }),
	"b3 ultimate":  ofB3(func(m B3, member Member, _, _ float64) float64 { return micro * m.ultimate(member) }),
	"b3 shrinkage": ofB3(func(m B3, member Member, _, t float64) float64 { return micro * m.Drying(member, t) }),
	"b3 q1":        ofB3(func(m B3, member Member, _, _ float64) float64 { return micro * m.factors(member).Q1 }),
	"b3 q2":        ofB3(func(m B3, member Member, _, _ float64) float64 { return micro * m.factors(member).Q2 }),
	"b3 q3":        ofB3(func(m B3, member Member, _, _ float64) float64 { return micro * m.factors(member).Q3 }),
	"b3 q4":        ofB3(func(m B3, member Member, _, _ float64) float64 { return micro * m.factors(member).Q4 }),
	"b3 q5":        ofB3(func(m B3, member Member, _, _ float64) float64 { return micro * m.factors(member).Q5 }),
	"b3 Q":         ofB3(func(_ B3, _ Member, t0, t float64) float64 { return FlowIntegral(t0, t-t0) }),
	"b3 C0":        ofB3(func(m B3, member Member, t0, t float64) float64 { return micro * m.BasicCompliance(member, t0, t) }),
	"b3 Cd":        ofB3(func(m B3, member Member, t0, t float64) float64 { return micro * m.DryingCompliance(member, t0, t) }),
	"b3 J":         ofB3(func(m B3, member Member, t0, t float64) float64 { return micro * m.Compliance(member, t0, t) }),
}

// ofB4 answers a quantity of model B4 from a row; strains carry the minus sign of
// the model's own convention where the row does.
func ofB4(f func(m B4, member Member, t0, t float64) float64) source.Func {
	return func(in source.Inputs) float64 {
		m := B4{Mean28: in.Num("fcm"), Cement: in.Num("c"), WaterCement: in.Num("wc"), AggregateCement: in.Num("ac"), Density: in.Num("rho"), Shape: 1}
		return f(m, memberIn(in), in.Num("t0"), in.Num("t"))
	}
}

var creepB4Quantities = map[string]source.Func{
	"b4 tau":       ofB4(func(m B4, member Member, _, _ float64) float64 { return m.HalfTime(member) }),
	"b4 limit":     ofB4(func(m B4, _ Member, _, _ float64) float64 { return micro * m.LimitStrain() }),
	"b4 ultimate":  ofB4(func(m B4, member Member, _, _ float64) float64 { return -micro * m.UltimateShrinkage(member) }),
	"b4 shrinkage": ofB4(func(m B4, member Member, _, t float64) float64 { return -micro * m.Drying(member, t) }),
	"b4 C0":        ofB4(func(m B4, _ Member, t0, t float64) float64 { return micro * m.BasicCompliance(t0, t) }),
	"b4 Cd":        ofB4(func(m B4, member Member, t0, t float64) float64 { return micro * m.DryingCompliance(member, t0, t) }),
}

var creepASQuantities = map[string]source.Func{
	"as shrinkage k1":         func(in source.Inputs) float64 { return DryingProgressAS(in.Num("t"), in.Num("th")) },
	"as shrinkage autogenous": func(in source.Inputs) float64 { return micro * AutogenousShrinkageAS(in.Num("fc"), in.Num("t")) },
	"as shrinkage drying":     dryingAS,
	"as shrinkage total": func(in source.Inputs) float64 {
		return dryingAS(in) + micro*AutogenousShrinkageAS(in.Num("fc"), in.Num("t"))
	},
	"as creep k2": func(in source.Inputs) float64 { return CreepProgressAS(in.Num("days"), in.Num("th")) },
	"as creep k3": func(in source.Inputs) float64 { return LoadingAgeFactorAS(in.Num("tau")) },
	"as creep phi": func(in source.Inputs) float64 {
		return CreepProgressAS(in.Num("days"), in.Num("th")) * LoadingAgeFactorAS(in.Num("tau")) * in.Num("k4") *
			highStrengthCreepAS(in.Num("fc"), in.Num("k4"), in.Num("th")) * BasicCreepAS(in.Num("fc"))
	},
}

func dryingAS(in source.Inputs) float64 {
	return DryingShrinkageAS(DryingProgressAS(in.Num("t"), in.Num("th")), in.Num("k4"), in.Num("fc"), in.Num("final"))
}
