package steel

import (
	"embed"
	"math"
	"strconv"
	"strings"

	"slabwright/source"
)

//go:embed testdata/published/*.csv
var published embed.FS

// Checks compares every published value in testdata/published with what this
// package gives.
func Checks() []source.Result {
	return source.Prove(published, "testdata/published", quantities)
}

// quantities are our answers to the tables, by subject.
var quantities = source.Together(dowelQuantities, groupQuantities, sizeQuantities, areaQuantities, crackQuantities)

func betaIn(in source.Inputs) float64 {
	return RelativeStiffness(in.Num("K"), in.Num("d"), in.Num("E"))
}

var dowelQuantities = map[string]source.Func{
	"dowel inertia": func(in source.Inputs) float64 { return Inertia(in.Num("d")) },
	"dowel beta":    betaIn,
	"dowel y0": func(in source.Inputs) float64 {
		return FaceDeflection(in.Num("P"), betaIn(in), in.Num("z"), in.Num("d"), in.Num("E"))
	},
	"dowel bearing": func(in source.Inputs) float64 {
		return BearingStress(in.Num("P"), in.Num("K"), in.Num("z"), in.Num("d"), in.Num("E"))
	},
	"dowel moment":      func(in source.Inputs) float64 { return GreatestMoment(in.Num("P"), betaIn(in), in.Num("z")) },
	"allowable bearing": func(in source.Inputs) float64 { return AllowableBearing(in.Num("d_in")*25.4, in.Num("strength")) },
	"allowable bearing cube": func(in source.Inputs) float64 {
		return AllowableBearingCube(in.Num("d"), in.Num("cube"))
	},
	"dowel bedding": func(in source.Inputs) float64 {
		return BeddingStiffness(in.Num("K"), in.Num("d"), in.Num("E"), in.Num("z"))
	},
	"dowel gap": func(in source.Inputs) float64 {
		return GapStiffness(in.Num("d"), in.Num("E"), in.Num("nu"), in.Num("z"))
	},
	"dowel spring": func(in source.Inputs) float64 {
		return DowelShearStiffness(in.Num("K"), in.Num("d"), in.Num("E"), in.Num("nu"), in.Num("z"))
	},
	"joint effectiveness": func(in source.Inputs) float64 { return JointEffectiveness(in.Num("LTE")) },
}

// slabRadius is the radius of relative stiffness of a row's slab, Westergaard.
func slabRadius(in source.Inputs) float64 {
	if l := in.NumOr("l", 0); l > 0 {
		return l
	}
	nu := in.Num("nu")
	return math.Pow(in.Num("E")*math.Pow(in.Num("h"), 3)/(12*(1-nu*nu)*in.Num("k")), 0.25)
}

func rowIn(in source.Inputs) []float64 { return DowelRow(int(in.Num("count")), in.Num("spacing")) }

// loadsIn reads "4500@0,4500@72".
func loadsIn(text string) (loads []WheelLoad) {
	for _, word := range strings.Split(text, ",") {
		force, place, _ := strings.Cut(word, "@")
		f, errF := strconv.ParseFloat(force, 64)
		p, errP := strconv.ParseFloat(place, 64)
		if errF != nil || errP != nil {
			panic("steel: a published row has loads " + text)
		}
		loads = append(loads, WheelLoad{f, p})
	}
	return loads
}

var groupQuantities = map[string]source.Func{
	"relative stiffness length": slabRadius,
	"reach":                     func(in source.Inputs) float64 { return in.Num("times") * slabRadius(in) },
	"effective dowels": func(in source.Inputs) float64 {
		return EffectiveDowels(rowIn(in), in.Num("at"), in.Num("times")*slabRadius(in))
	},
	"dowel force": func(in source.Inputs) float64 {
		return DowelForces(rowIn(in), loadsIn(in.Word("loads")), in.Num("times")*slabRadius(in), 1)[int(in.Num("dowel"))]
	},
}

// ofSize answers a column of the dowel size tables, NaN where the rule has none.
func ofSize(f func(DowelSize) float64) source.Func {
	return func(in source.Inputs) float64 {
		s, err := DowelSizeFor(in.Word("rule"), in.Num("h"))
		if err != nil {
			return math.NaN()
		}
		return f(s)
	}
}

var sizeQuantities = map[string]source.Func{
	"dowel size length": ofSize(func(s DowelSize) float64 {
		if s.Length == nil {
			return math.NaN()
		}
		return *s.Length
	}),
	"dowel size spacing":       ofSize(func(s DowelSize) float64 { return s.Spacing }),
	"dowel size diameter":      ofSize(func(s DowelSize) float64 { return s.Diameter }),
	"dowel size diameter high": ofSize(func(s DowelSize) float64 { return s.DiameterHigh }),
	"dowel by thumb":           func(in source.Inputs) float64 { return DowelDiameterByThumb(in.Num("h")) },
	"dowel depth tolerance":    func(in source.Inputs) float64 { return DepthTolerance(in.Num("d")) },
	"least keyed thickness":    func(source.Inputs) float64 { return LeastKeyedThickness / mmPerInch },
	"least dowelled thickness": func(source.Inputs) float64 { return LeastDowelledThickness / mmPerInch },
	"interlock usable":         func(source.Inputs) float64 { return InterlockUsableOpening() },
	"interlock design": func(in source.Inputs) float64 {
		share, opening := InterlockDesignTransfer()
		return map[string]float64{"share": share, "opening": opening}[in.Word("of")]
	},
	"transfer criterion": func(in source.Inputs) float64 { return foundOr(TransferCriterion(in.Word("practice"))) },
	"dowel alignment": func(in source.Inputs) float64 {
		v, _ := CheckAlignment(Alignment{Skew: in.Num("skew"), Tilt: in.Num("tilt"), SideShift: in.Num("side"), Depth: in.Num("depth"), Length: in.Num("length")})
		return map[Verdict]float64{Within: 0, Outside: 1, Assess: 2}[v]
	},
}
