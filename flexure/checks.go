package flexure

import (
	"embed"
	"math"

	"slabwright/source"
)

//go:embed testdata/published/*.csv
var published embed.FS

// Checks compares every published row of this package with our functions. The
// tables are in the units they are printed in; the forms are homogeneous, so these
// go through as they are.
func Checks() []source.Result { return source.Prove(published, "testdata/published", quantities) }

// printed is a slab and wheel as a table row states them.
type printed struct{ load, radius, modulus, thickness, poisson, support, stiffness float64 }

// row reads a slab; "unit=1" is the slab with D = k = l = 1 and thickness 1.
func row(in source.Inputs) printed {
	c := printed{load: in.NumOr("P", 1), radius: in.NumOr("a", 0), poisson: in.Num("nu")}
	if in.NumOr("unit", 0) == 1 {
		c.modulus, c.thickness, c.support = 12*(1-c.poisson*c.poisson), 1, 1
	} else {
		c.modulus, c.thickness, c.support = in.Num("E"), in.Num("h"), in.Num("k")
	}
	c.stiffness = RelativeStiffness(c.modulus, c.thickness, c.poisson, c.support)
	return c
}

func ofSlab(f func(printed) float64) source.Func {
	return func(in source.Inputs) float64 { return f(row(in)) }
}

// curlRow reads a slab with a temperature difference and hands on C both ways.
func curlRow(f func(c printed, cx, cy, expansion, difference float64) float64) source.Func {
	return func(in source.Inputs) float64 {
		c := row(in)
		return f(c, Bradbury(in.Num("L")/c.stiffness), Bradbury(in.Num("W")/c.stiffness), in.Num("alpha"), in.Num("dT"))
	}
}

var quantities = merged(wheelQuantities, curlQuantities, strengthQuantities, plateQuantities, measuredQuantities)

func merged(parts ...map[string]source.Func) map[string]source.Func {
	all := map[string]source.Func{}
	for _, p := range parts {
		for k, f := range p {
			all[k] = f
		}
	}
	return all
}

var wheelQuantities = map[string]source.Func{
	"l": ofSlab(func(c printed) float64 { return c.stiffness }),
	"b": ofSlab(func(c printed) float64 { return EquivalentRadius(c.radius, c.thickness) }),
	"interior_stress": ofSlab(func(c printed) float64 {
		return InteriorStress(c.load, EquivalentRadius(c.radius, c.thickness), c.thickness, c.stiffness, c.poisson)
	}),
	"interior_ordinary": ofSlab(func(c printed) float64 {
		return InteriorStress(c.load, c.radius, c.thickness, c.stiffness, c.poisson)
	}),
	"interior_w": ofSlab(func(c printed) float64 { return InteriorDeflection(c.load, c.radius, c.stiffness, c.support) }),
	"exact_w":    ofSlab(func(c printed) float64 { return ExactInteriorDeflection(c.load, c.radius, c.stiffness, c.support) }),
	"exact_stress": ofSlab(func(c printed) float64 {
		return ExactInteriorStress(c.load, c.radius, c.thickness, c.stiffness, c.poisson)
	}),
	"point_ratio":   func(in source.Inputs) float64 { return PointDeflection(in.Num("r")) / PointDeflection(0) },
	"edge_circle":   ofSlab(func(c printed) float64 { return edge(EdgeStress, Circle, c) }),
	"edge_semi":     ofSlab(func(c printed) float64 { return edge(EdgeStress, Semicircle, c) }),
	"edge_w_circle": ofSlab(func(c printed) float64 { return edge(EdgeDeflection, Circle, c) }),
	"edge_w_semi":   ofSlab(func(c printed) float64 { return edge(EdgeDeflection, Semicircle, c) }),
	"edge_1926": ofSlab(func(c printed) float64 {
		return EdgeStress1926(c.load, EquivalentRadius(c.radius, c.thickness), c.thickness, c.stiffness, c.poisson)
	}),
	"corner":             ofSlab(func(c printed) float64 { return CornerStress(c.load, c.radius, c.thickness, c.stiffness) }),
	"corner_w":           ofSlab(func(c printed) float64 { return CornerDeflection(c.load, c.radius, c.stiffness, c.support) }),
	"corner_ioannides":   ofSlab(func(c printed) float64 { return CornerStressIoannides(c.load, c.radius, c.thickness, c.stiffness) }),
	"corner_w_ioannides": ofSlab(func(c printed) float64 { return CornerDeflectionIoannides(c.load, c.radius, c.stiffness, c.support) }),
	"corner_pickett": ofSlab(func(c printed) float64 {
		return CornerStressPickett(c.load, c.radius, c.thickness, c.stiffness, false)
	}),
	"corner_bradbury": ofSlab(func(c printed) float64 { return CornerStressBradbury(c.load, c.radius, c.thickness, c.stiffness) }),
	"corner_x1":       ofSlab(func(c printed) float64 { return CornerStressDistance(c.radius, c.stiffness) }),
	"lte":             func(in source.Inputs) float64 { return TransferEfficiency(in.Num("agg"), in.Num("al")) },
	"equal_radius":    func(in source.Inputs) float64 { return EqualAreaRadius(in.Num("A")) },
}

func edge(form func(Contact, float64, float64, float64, float64, float64, float64) float64, contact Contact, c printed) float64 {
	return form(contact, c.load, c.radius, c.modulus, c.thickness, c.poisson, c.support)
}

var curlQuantities = map[string]source.Func{
	"bradbury": func(in source.Inputs) float64 { return Bradbury(in.Num("r")) },
	"cx":       curlRow(func(_ printed, cx, _, _, _ float64) float64 { return cx }),
	"cy":       curlRow(func(_ printed, _, cy, _, _ float64) float64 { return cy }),
	"curl_edge": curlRow(func(c printed, cx, _, alpha, dT float64) float64 {
		return CurlEdgeStress(cx, c.modulus, alpha, dT)
	}),
	"curl_edge_y": curlRow(func(c printed, _, cy, alpha, dT float64) float64 {
		return CurlEdgeStress(cy, c.modulus, alpha, dT)
	}),
	"curl_x": curlRow(func(c printed, cx, cy, alpha, dT float64) float64 {
		return CurlInteriorStress(cx, cy, c.modulus, alpha, dT, c.poisson)
	}),
	"curl_y": curlRow(func(c printed, cx, cy, alpha, dT float64) float64 {
		return CurlInteriorStress(cy, cx, c.modulus, alpha, dT, c.poisson)
	}),
	"curl_full": curlRow(func(c printed, _, _, alpha, dT float64) float64 {
		return CurlFullRestraint(c.modulus, alpha, dT, c.poisson)
	}),
	"curl_corner": curlRow(func(c printed, _, _, alpha, dT float64) float64 {
		return CurlCornerStress(c.modulus, alpha, dT, c.poisson, c.radius, c.stiffness)
	}),
	"edge_of_c": func(in source.Inputs) float64 {
		return CurlEdgeStress(in.Num("C"), in.Num("E"), in.Num("alpha"), in.Num("dT"))
	},
	"interior_of_c": func(in source.Inputs) float64 {
		return CurlInteriorStress(in.Num("Cx"), in.Num("Cy"), in.Num("E"), in.Num("alpha"), in.Num("dT"), in.Num("nu"))
	},
	"free_lift": func(in source.Inputs) float64 {
		return FreeCurlLift(FreeCurvature(in.Num("alpha"), in.Num("dT"), in.Num("h")), in.Num("r"))
	},
	"strip_m":       func(in source.Inputs) float64 { return Strip(in.Num("r")).Moment },
	"strip_c":       func(in source.Inputs) float64 { return Strip(in.Num("r")).Middle },
	"strip_e":       func(in source.Inputs) float64 { return Strip(in.Num("r")).End },
	"dT_eq":         func(in source.Inputs) float64 { return EquivalentDifference(in.Num("deps")*1e-6, in.Num("a")) },
	"parabola_mean": func(in source.Inputs) float64 { m, _ := parabola(in); return m * 1e6 },
	"parabola_dT":   func(in source.Inputs) float64 { _, d := parabola(in); return d },
	"eisenmann": func(in source.Inputs) float64 {
		return EisenmannLength(in.Num("h")/1e3, in.Num("E")*1e6, in.Num("a"), in.Num("grad")*1e3, false) * 1e3
	},
	"eisenmann_square": func(in source.Inputs) float64 {
		return EisenmannLength(in.Num("h")/1e3, in.Num("E")*1e6, in.Num("a"), in.Num("grad")*1e3, true) * 1e3
	},
	"weight_length": func(in source.Inputs) float64 {
		return WeightLength(in.Num("h")/1e3, in.Num("E")*1e6, in.Num("a"), in.Num("grad")*1e3, 24000, 0.15) * 1e3
	},
}

// parabola puts shrinkage that falls off with the square of depth through
// EquivalentOfProfile in 400 straight pieces.
func parabola(in source.Inputs) (mean, difference float64) {
	const pieces = 400
	h := in.Num("h")
	var depths, strains []float64
	for i := 0; i <= pieces; i++ {
		d := float64(i) / pieces
		depths = append(depths, d*h)
		strains = append(strains, in.Num("eps0")*1e-6*(1-d)*(1-d))
	}
	return EquivalentOfProfile(depths, strains, in.Num("a"))
}

var strengthQuantities = map[string]source.Func{
	"collapse": func(in source.Inputs) float64 {
		return CollapseLoad(Position(in.Word("at")), in.Num("r"), in.Num("Mp"), in.Num("Mn"))
	},
	"tr34_l":  func(in source.Inputs) float64 { l, _ := floor(in); return l },
	"tr34_mn": func(in source.Inputs) float64 { _, mn := floor(in); return mn / 1e3 },
	"tr34_load": func(in source.Inputs) float64 {
		l, mn := floor(in)
		return CollapseLoad(Position(in.Word("at")), in.Num("a")/l, in.Num("Mp")*1e3, mn) / 1e3
	},
	"line_factor": func(in source.Inputs) float64 { return LineFactor(in.Num("k"), in.Num("E"), in.Num("h")) },
	"line_load": func(in source.Inputs) float64 {
		return LineLoad(LineFactor(in.Num("k"), in.Num("E"), in.Num("h")), in.Num("Mn")*1e3)
	},
	"aisle_load": func(in source.Inputs) float64 {
		return AisleLoad(LineFactor(in.Num("k"), in.Num("E"), in.Num("h")), in.Num("Mn")*1e3) * 1e3
	},
	"strip_moment": func(in source.Inputs) float64 { return StripMoment(in.Num("q"), in.Num("lambda")) },
	"pca":          func(in source.Inputs) float64 { return FatiguePCA(in.Num("S")) },
	"pca_unlimited": func(in source.Inputs) float64 {
		if math.IsInf(FatiguePCA(in.Num("S")), 1) {
			return 1
		}
		return 0
	},
	"punch_v": func(in source.Inputs) float64 { return PunchingStrength(in.Num("fck"), in.Num("d")) },
	"punch_u": func(in source.Inputs) float64 {
		return PunchingPerimeter(Position(in.Word("at")), in.Num("b"), in.Num("b"), in.Num("d"))
	},
	"punch_load": func(in source.Inputs) float64 {
		u := PunchingPerimeter(Position(in.Word("at")), in.Num("b"), in.Num("b"), in.Num("d"))
		return PunchingStrength(in.Num("fck"), in.Num("d")) * u * in.Num("d") / 1e3
	},
	"face_cap": func(in source.Inputs) float64 { return FaceShearCap(in.Num("fck"), in.Num("fck")/in.Num("gamma")) },
	"face_load": func(in source.Inputs) float64 {
		return FaceShearCap(in.Num("fck"), in.Num("fck")/in.Num("gamma")) * 4 * in.Num("b") * in.Num("d") / 1e3
	},
	"aashto_log": func(in source.Inputs) float64 { return RoadTestLog(roadTest(in)) },
	"aashto":     func(in source.Inputs) float64 { return math.Pow(10, RoadTestLog(roadTest(in))) },
	"darter":     func(in source.Inputs) float64 { return FatigueDarter(in.Num("S")) },
	"mepdg":      func(in source.Inputs) float64 { return FatigueMechanistic(in.Num("S")) },
	"miner_part": func(in source.Inputs) float64 { return Damage(FatiguePCA, Traffic{in.Num("n"), in.Num("S")}) },
	"miner": func(in source.Inputs) float64 {
		return Damage(FatiguePCA, Traffic{in.Num("n1"), in.Num("S1")}, Traffic{in.Num("n2"), in.Num("S2")}, Traffic{in.Num("n3"), in.Num("S3")})
	},
}

// floor returns l in mm and Mn in N·mm/mm of a floor of a strength class, with
// modulus and strength by EN 1992-1-1 and the size factor 1.6 - h; it serves the
// table rows only.
func floor(in source.Inputs) (stiffness, cracking float64) {
	fck, h := in.Num("fck"), in.Num("h")
	modulus := 22000 * math.Pow((fck+8)/10, 0.3)
	flexural := math.Max(1.6-h/1000, 1) * 0.3 * math.Pow(fck, 2.0/3) / in.Num("gamma")
	return RelativeStiffness(modulus, h, 0.2, in.Num("k")), CrackingMoment(flexural, h)
}

func roadTest(in source.Inputs) RoadTest {
	return RoadTest{in.Num("D"), in.Num("Sc"), in.Num("Cd"), in.Num("J"), in.Num("Ec"), in.Num("k"), in.Num("dPSI"), in.Num("pt"), in.Num("ZR"), in.Num("S0")}
}
