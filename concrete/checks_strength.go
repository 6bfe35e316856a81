package concrete

import "slabwright/source"

// enIn reads the EN 1992-1-1 model of a row.
func enIn(in source.Inputs) EN1992 {
	return NewEN1992(in.Num("fck"), CementClass(in.Word("class")))
}

func mcIn(in source.Inputs) MC2010 {
	return MC2010{Mean28: in.Num("fcm"), Cement: in.Word("cement"), Aggregate: in.Num("aggregate")}
}

// ofACI answers a quantity from the strength at an age of a row.
func ofACI(f func(strength float64) float64) source.Func {
	return func(in source.Inputs) float64 {
		return f(NewACI209(in.Num("f28"), in.Word("type")+" moist").Strength(in.Num("t")))
	}
}

var strengthQuantities = map[string]source.Func{
	"en mean strength": func(in source.Inputs) float64 { return MeanStrengthEN(in.Num("fck")) },
	"en mean tensile":  func(in source.Inputs) float64 { return MeanTensileEN(in.Num("fck")) },
	"en modulus":       func(in source.Inputs) float64 { return MeanModulusEN(MeanStrengthEN(in.Num("fck"))) / 1000 },
	"en tensile 5%":    func(in source.Inputs) float64 { return TensileFractile5EN * MeanTensileEN(in.Num("fck")) },
	"en flexural": func(in source.Inputs) float64 {
		return FlexuralRatioEN(in.Num("h")) * MeanTensileEN(in.Num("fck"))
	},
	"en development": func(in source.Inputs) float64 {
		s, _ := DevelopmentCoefficientEN(CementClass(in.Word("class")))
		return DevelopmentEN(s, in.Num("t"))
	},
	"en strength at": func(in source.Inputs) float64 { return enIn(in).Strength(in.Num("t")) },
	"en tensile at":  func(in source.Inputs) float64 { return enIn(in).Tensile(in.Num("t")) },
	"en modulus at":  func(in source.Inputs) float64 { return enIn(in).Modulus(in.Num("t")) / 1000 },
	"mc development": func(in source.Inputs) float64 { return mcIn(in).development(in.Num("t")) },
	"mc tangent": func(in source.Inputs) float64 {
		return TangentModulusMC(in.Num("fcm"), in.Num("aggregate")) / 1000
	},
	"mc tangent at": func(in source.Inputs) float64 { return mcIn(in).Modulus(in.Num("t")) / 1000 },
	"mc secant": func(in source.Inputs) float64 {
		return SecantFactorMC(in.Num("fcm")) * TangentModulusMC(in.Num("fcm"), in.Num("aggregate")) / 1000
	},
	"mc fracture energy": func(in source.Inputs) float64 { return FractureEnergyMC(in.Num("fcm")) },
	"en flexural ratio":  func(in source.Inputs) float64 { return FlexuralRatioEN(in.Num("h")) },
	"mc flexural ratio":  func(in source.Inputs) float64 { return FlexuralRatioMC(in.Num("h")) },
	"aci strength at":    ofACI(func(strength float64) float64 { return strength }),
	"aci modulus at":     ofACI(ModulusACI),
	"aci rupture at":     ofACI(ModulusOfRuptureACI),
	"as flexural":        func(in source.Inputs) float64 { return FlexuralTensileAS(in.Num("fc")) },
	"as axial":           func(in source.Inputs) float64 { return AxialTensileAS(in.Num("fc")) },
	"as mean axial":      func(in source.Inputs) float64 { return MeanTensileFactorAS * AxialTensileAS(in.Num("fc")) },
	"as modulus":         func(in source.Inputs) float64 { return ModulusAS(in.Num("rho"), in.Num("fcmi")) },
	"as in situ":         func(in source.Inputs) float64 { return MeanInSituAS(in.Num("fc")) },
	"degree ratio": func(in source.Inputs) float64 {
		return DegreeRatio(in.Num("r"), in.Num("r0"), 1, in.Num("n"))
	},
}
