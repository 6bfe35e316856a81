package causes

import (
	"embed"
	"strconv"

	"slabwright/source"
)

//go:embed testdata/published/*.csv
var published embed.FS

// Checks compares the bands, limits and cases with what published guides say.
func Checks() []source.Result {
	return source.Prove(published, "testdata/published", quantities)
}

var quantities = map[string]source.Func{
	"is_likeliest": func(in source.Inputs) float64 {
		v := FindVariable(in.Word("variable"))
		own := Chance(in.Word("cause"), v.Name, stateIn(in, v))
		for _, s := range v.States {
			if Chance(in.Word("cause"), v.Name, s) > own {
				return 0
			}
		}
		return 1
	},
	"speaks_for": func(in source.Inputs) float64 {
		v := FindVariable(in.Word("variable"))
		state := stateIn(in, v)
		mean := 0.0
		for _, c := range catalogue {
			mean += Chance(c.ID, v.Name, state) / float64(len(catalogue))
		}
		return truth(Chance(in.Word("cause"), v.Name, state) > mean)
	},
	"state_of": func(in source.Inputs) float64 {
		return truth(stateIn(in, FindVariable(in.Word("variable"))) == in.Word("state"))
	},
	"plan_location": func(in source.Inputs) float64 {
		distance, panel, angle := in.Num("distance"), in.Num("panel"), in.Num("angle")
		o := location(PlanFacts{DistanceToJoint: &distance, PanelLength: &panel, AngleToNearestJoint: &angle, Known: source.Measured})
		return truth(o != nil && o.State == in.Word("state"))
	},
	"levels_state": func(in source.Inputs) float64 {
		f := SeenFacts{Lift: &source.Fact{Value: in.Num("lift"), Known: source.Measured}}
		return truth(f.levels().State == in.Word("state"))
	},
	"sawing_state": func(in source.Inputs) float64 {
		mean := in.Num("mean")
		f := PourFacts{SawnAfterHours: &source.Fact{Value: in.Num("hours"), Known: source.Recorded}, MeanAirTemperature: &mean}
		return truth(f.sawing().State == in.Word("state"))
	},
	"groove_state": func(in source.Inputs) float64 {
		fact := func(name string) *source.Fact { return &source.Fact{Value: in.Num(name), Known: source.Recorded} }
		f := PourFacts{GrooveDepth: fact("depth"), Thickness: fact("thickness"), SawnAfterHours: fact("hours"),
			EarlyEntry: &source.Choice{Value: in.Word("early"), Known: source.Recorded}}
		return truth(f.groove().State == in.Word("state"))
	},
	"textbook_case_leads": func(in source.Inputs) float64 {
		for _, c := range Cases() {
			if c.ID == in.Word("case") {
				return truth(c.Result().OK)
			}
		}
		return 0
	},
}

// stateIn reads "state", or "value" in the unit of the variable's limits.
func stateIn(in source.Inputs, v *Variable) string {
	text, ok := in["value"]
	if !ok {
		return in.Word("state")
	}
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return in.Word("state")
	}
	l := limits[v.Name]
	return l.state(v, l.band(value))
}

func truth(b bool) float64 {
	if b {
		return 1
	}
	return 0
}
