package restraint

import (
	"fmt"
	"math"

	"slabwright/source"
	"slabwright/working"
)

// FrictionInput is what [FrictionWorking] needs.
type FrictionInput struct {
	ID             string  // of the sheet
	Title          string  // such as "Base friction, panel P3"
	Length         float64 // between free ends, m
	Thickness      float64 // m
	Friction       float64 // coefficient, –
	UnitWeight     float64 // N/m³
	ShearStiffness float64 // of the base before it slips, N/m³
	Modulus        float64 // of the concrete when the strain came, Pa
	Strain         float64 // free shortening held against, positive, –
	Ageing         float64 // χ, – ; 0.8 usually
	Creep          float64 // φ over the time the strain took, –
	Strength       float64 // tensile strength at the same time, Pa
	CutDepth       float64 // of the saw cut at the place, m; 0 for none
	Known          map[string]string
}

// Friction is the outcome of [FrictionWorking].
type Friction struct {
	Drag    float64 // sliding over the whole length, Pa
	Elastic float64 // base giving like a spring, Pa
	Full    float64 // nothing gives, Pa
	Stress  float64 // the least of the three: what the base can do, Pa
	Ratio   float64 // Stress over the strength of the section there, –
	Release float64 // length over which the base could build up the strength, m
}

// BaseFriction returns what the base alone can do to a panel.
func BaseFriction(in FrictionInput) Friction {
	eased := in.Modulus / (1 + in.Ageing*in.Creep)
	f := Friction{
		Drag:    DragStress(in.Friction, in.UnitWeight, in.Length),
		Elastic: ElasticBedStress(eased, in.Strain, in.Length, in.Thickness, in.ShearStiffness),
		Full:    RestrainedStress(1, in.Modulus, in.Strain, in.Ageing, in.Creep),
		Release: ReleaseLength(in.Strength, in.Thickness, in.Friction*in.UnitWeight*in.Thickness),
	}
	f.Stress = math.Min(f.Drag, math.Min(f.Elastic, f.Full))
	f.Ratio = f.Stress / (in.Strength * NetSectionTension(in.CutDepth/in.Thickness))
	return f
}

// Check returns what is wrong with the input, in the engineer's words; nil when it
// can be worked.
func (in FrictionInput) Check() []error {
	var bad []error
	need := func(name string, v, low, high float64, unit string) {
		if !(v >= low && v <= high) {
			bad = append(bad, fmt.Errorf("%s is %g %s; %g to %g %s can be worked", name, v, unit, low, high, unit))
		}
	}
	need("length", in.Length, 0.1, 1000, "m")
	need("thickness", in.Thickness, 0.04, 2, "m")
	need("friction", in.Friction, 0.01, 10, "")
	need("unit weight", in.UnitWeight, 1000, 50000, "N/m³")
	need("shear stiffness of the base", in.ShearStiffness, 1e4, 1e12, "N/m³")
	need("modulus", in.Modulus, 1e6, 1e11, "Pa")
	need("strain", in.Strain, 0, 0.01, "")
	need("creep coefficient", in.Creep, 0, 20, "")
	need("ageing coefficient", in.Ageing, 0, 1, "")
	need("strength", in.Strength, 1e3, 1e8, "Pa")
	need("cut depth", in.CutDepth, 0, in.Thickness*0.95, "m")
	return bad
}

// FrictionWorking returns the calculation of [BaseFriction] line by line, the drag
// with the elastic value beside it, and the comparison with the strength. The input
// must pass [FrictionInput.Check]; it panics otherwise.
func FrictionWorking(in FrictionInput) working.Sheet {
	if bad := in.Check(); len(bad) > 0 {
		panic("restraint: FrictionWorking of an unchecked input: " + bad[0].Error())
	}
	f := BaseFriction(in)
	s := working.Sheet{ID: in.ID, Title: in.Title, Basis: []string{
		"The panel is free at both ends; only the base holds it.",
		"The base can do no more than the least of sliding drag, elastic hold and full restraint."}}
	s.Add(in.holdLines(f)...)
	s.Add(in.strengthLines(f)...)
	return s
}

// put makes an input of a line with how it is known.
func (in FrictionInput) put(symbol string, v float64, unit, what string) working.Input {
	i := working.In(symbol, v, unit, what)
	i.Known = in.Known[symbol]
	return i
}

// holdLines are the lines of what the base can do.
func (in FrictionInput) holdLines(f Friction) []working.Line {
	statics, trost := source.Cite("mechanics", ""), source.Cite("trost", "age-adjusted modulus")
	length, thickness := in.put("L", in.Length, "m", "between free ends"), in.put("h", in.Thickness, "m", "thickness")
	strain := in.put("ε", in.Strain*1e6, "µε", "free shortening")
	eased := in.Modulus / (1 + in.Ageing*in.Creep)
	b := ShearLag(in.ShearStiffness, eased, in.Thickness)
	easedIn := working.In("E_c", eased/1e6, "MPa", "eased modulus")
	return []working.Line{
		working.New("E_c", "Modulus eased by creep", "E / (1 + χ · φ)", eased/1e6, "MPa", trost,
			in.put("E", in.Modulus/1e6, "MPa", "modulus when the strain came"), in.put("χ", in.Ageing, "–", "ageing coefficient"), in.put("φ", in.Creep, "–", "creep coefficient")),
		working.New("σ_full", "Tension if nothing gave", "E_c · ε / 10⁶", f.Full/1e6, "MPa", trost, easedIn, strain),
		working.New("σ_drag", "Tension at mid-length while sliding", "μ · γ · L / 2 / 1000", f.Drag/1e6, "MPa", source.Cite("aci360", "subgrade drag"),
			in.put("μ", in.Friction, "–", "coefficient of friction"), in.put("γ", in.UnitWeight/1e3, "kN/m³", "unit weight"), length).
			Beside("base as a spring that has not slipped", f.Elastic/1e6, statics, dragReason(f)),
		working.New("b", "Build-up of tension from the free end", "sqrt(k_s / (E_c · h))", b, "1/m", statics,
			in.put("k_s", in.ShearStiffness/1e6, "MPa/m", "shear stiffness of the base"), easedIn, thickness),
		working.New("σ_el", "Tension at mid-length if the base has not slipped", "E_c · ε / 10⁶ · (1 − 1 / cosh(b · L / 2))", f.Elastic/1e6, "MPa", statics,
			easedIn, strain, working.In("b", b, "1/m", "build-up"), length),
		working.New("σ", "What the base can do", "min(σ_drag, σ_el, σ_full)", f.Stress/1e6, "MPa", statics,
			working.In("σ_drag", f.Drag/1e6, "MPa", "sliding"), working.In("σ_el", f.Elastic/1e6, "MPa", "elastic"), working.In("σ_full", f.Full/1e6, "MPa", "full")),
	}
}

// strengthLines compare it with the strength.
func (in FrictionInput) strengthLines(f Friction) []working.Line {
	statics := source.Cite("mechanics", "")
	strength := in.put("f_ct", in.Strength/1e6, "MPa", "tensile strength at that time")
	ratio := working.New("σ/f", "Against the strength of the section there", "σ / (f_ct · (1 − a / h))", f.Ratio, "–", statics,
		working.In("σ", f.Stress/1e6, "MPa", "tension"), strength, in.put("a", in.CutDepth, "m", "saw cut"), in.put("h", in.Thickness, "m", "thickness"))
	ratio.Verdict = verdict(f.Ratio)
	return []working.Line{ratio, working.New("x", "Length over which the base could build up the strength", "f_ct · 1000 / (μ · γ)", f.Release, "m", statics,
		strength, in.put("μ", in.Friction, "–", "coefficient of friction"), in.put("γ", in.UnitWeight/1e3, "kN/m³", "unit weight"))}
}

// dragReason says why sliding and elastic values may be far apart.
func dragReason(f Friction) string {
	if f.Elastic < f.Drag {
		return "The movement is too small to make the base slip everywhere: the elastic value governs."
	}
	return "A base that slips cannot pull harder than its friction: the sliding value governs."
}

func verdict(ratio float64) string {
	if ratio < 1 {
		return "pass"
	}
	return "fail"
}
