package flexure

import (
	"math"
	"strings"

	"slabwright/source"
	"slabwright/working"
)

// CurlInput is what [CurlWorking] needs.
type CurlInput struct {
	ID         string  // of the sheet
	Title      string  // such as "Curl of panel P3, first night"
	Length     float64 // long side, m
	Width      float64 // short side, m
	Thickness  float64 // m
	Modulus    float64 // of elasticity, eased by creep where the difference came slowly, Pa
	Poisson    float64 // –
	Support    float64 // k, N/m³
	Expansion  float64 // coefficient, 1/K
	Difference float64 // top less bottom, K; shrinkage of the top counts as cooling
	UnitWeight float64 // N/m³
	Strength   float64 // flexural tensile strength at that time, Pa; 0 leaves the comparison out
	Known      map[string]string
}

// CurlResult is the outcome of [CurlWorking]. Stresses are positive for tension
// underneath, negative for tension on top.
type CurlResult struct {
	Stiffness float64 // l, m
	AlongC    float64 // C for the length
	AcrossC   float64 // C for the width
	Along     float64 // interior stress along the length, Pa
	Across    float64 // interior stress across it, Pa
	Edge      float64 // at mid-length of the long edge, Pa
	Full      float64 // held flat, Pa
	Corner    float64 // rise of the corners above the middle without weight, m (negative: middle up)
	Critical  float64 // Eisenmann's length, m
	Weight    float64 // greatest stress that the weight can make over the length, Pa
}

// Curl returns the curling stresses of a panel that stays on the ground.
func Curl(in CurlInput) CurlResult {
	l := RelativeStiffness(in.Modulus, in.Thickness, in.Poisson, in.Support)
	cx, cy := Bradbury(in.Length/l), Bradbury(in.Width/l)
	return CurlResult{
		Stiffness: l, AlongC: cx, AcrossC: cy,
		Along:    CurlInteriorStress(cx, cy, in.Modulus, in.Expansion, in.Difference, in.Poisson),
		Across:   CurlInteriorStress(cy, cx, in.Modulus, in.Expansion, in.Difference, in.Poisson),
		Edge:     CurlEdgeStress(cx, in.Modulus, in.Expansion, in.Difference),
		Full:     CurlFullRestraint(in.Modulus, in.Expansion, in.Difference, in.Poisson),
		Corner:   -FreeCurlLift(FreeCurvature(in.Expansion, in.Difference, in.Thickness), math.Hypot(in.Length, in.Width)/2),
		Critical: EisenmannLength(in.Thickness, in.Modulus, in.Expansion, in.Difference/in.Thickness, in.Length <= 1.2*in.Width),
		Weight:   WeightBound(in.UnitWeight, in.Length, in.Thickness),
	}
}

// Check returns what is wrong with the input, in the engineer's words; nil when it
// can be worked.
func (in CurlInput) Check() []error {
	b := bounds{}
	b.need("length", in.Length, 0.2, 500, "m")
	b.need("width", in.Width, 0.2, 500, "m")
	b.slab(in.Thickness, in.Modulus, in.Poisson, in.Support)
	b.need("coefficient of expansion", in.Expansion, 1e-6, 3e-5, "1/K")
	b.need("temperature difference", in.Difference, -200, 200, "K")
	b.need("unit weight", in.UnitWeight, 1000, 50000, "N/m³")
	b.need("strength", in.Strength, 0, 1e8, "Pa")
	return b
}

// CurlWorking returns the calculation of [Curl] line by line, with the stress by
// Eisenmann's length beside the one by Bradbury. The input must pass
// [CurlInput.Check]; it panics otherwise.
func CurlWorking(in CurlInput) working.Sheet {
	if bad := in.Check(); len(bad) > 0 {
		panic("flexure: CurlWorking of an unchecked input: " + bad[0].Error())
	}
	c := Curl(in)
	s := working.Sheet{ID: in.ID, Title: in.Title, Basis: []string{
		"Straight gradient through the depth; the slab stays on the ground, which pushes and pulls.",
		"Where edges lift, the stresses are less and the lift is more than given here.",
		"Positive: tension underneath. Negative: tension on top."}}
	s.Add(stiffnessLine(in.Known, in.Modulus, in.Thickness, in.Poisson, in.Support, c.Stiffness))
	s.Add(in.restraintLines(c)...)
	s.Add(in.curlStressLines(c)...)
	s.Add(in.boundLines(c)...)
	return s
}

// stripCheck is why the two forms of C agree to many digits.
const stripCheck = "The same strip, solved for its deflection."

func (in CurlInput) restraintLines(c CurlResult) []working.Line {
	bradbury := source.Cite("bradbury1938", "coefficient C")
	l := working.In("l", c.Stiffness, "m", "radius of relative stiffness")
	relative := func(symbol, what, side string, length float64) working.Line {
		return working.New(symbol, what, side+" / (l · sqrt(8))", length/c.Stiffness/math.Sqrt(8), "–", bradbury, put(in.Known, side, length, "m", "side of the panel"), l)
	}
	share := func(symbol, what, x string, value, length float64) working.Line {
		formula := strings.ReplaceAll("1 − 2 · (sin(x) · cosh(x) + cos(x) · sinh(x)) / (sin(2 · x) + sinh(2 · x))", "(x", "("+x)
		formula = strings.ReplaceAll(formula, "· x)", "· "+x+")")
		return working.New(symbol, what, formula, value, "–", bradbury, working.In(x, length/c.Stiffness/math.Sqrt(8), "–", "relative length")).
			Beside("moment of a strip on springs over full restraint", Strip(length/c.Stiffness).Moment, source.Cite("own", "strip on springs"), stripCheck)
	}
	return []working.Line{
		relative("x_L", "Relative length along", "L", in.Length), share("C_x", "Share of full restraint along", "x_L", c.AlongC, in.Length),
		relative("x_B", "Relative length across", "B", in.Width), share("C_y", "Share of full restraint across", "x_B", c.AcrossC, in.Width),
	}
}

func (in CurlInput) curlStressLines(c CurlResult) []working.Line {
	westergaard := source.Cite("westergaard1927", "")
	e, alpha, dT := put(in.Known, "E", in.Modulus/1e6, "MPa", "modulus"), put(in.Known, "α", in.Expansion, "1/K", "expansion"), put(in.Known, "ΔT", in.Difference, "K", "top less bottom")
	nu := put(in.Known, "ν", in.Poisson, "–", "Poisson's ratio")
	cx, cy := working.In("C_x", c.AlongC, "–", "along"), working.In("C_y", c.AcrossC, "–", "across")
	eisenmann := EisenmannStress(in.Length, math.Max(c.Critical, 1e-9), c.Full)
	along := working.New("σ_x", "Middle of the panel, along", "E · α · ΔT / (2 · (1 − ν²)) · (C_x + ν · C_y)", c.Along/1e6, "MPa", westergaard, e, alpha, dT, nu, cx, cy)
	if in.Difference != 0 {
		along = along.Beside("by Eisenmann's critical length", eisenmann/1e6, source.Cite("eisenmann1979", "stress by length"),
			"It counts the weight of the slab, not the stiffness of the ground; short panels part furthest.")
	}
	lines := []working.Line{along,
		working.New("σ_y", "Middle of the panel, across", "E · α · ΔT / (2 · (1 − ν²)) · (C_y + ν · C_x)", c.Across/1e6, "MPa", westergaard, e, alpha, dT, nu, cx, cy),
		working.New("σ_e", "Middle of the long edge", "C_x · E · α · ΔT / 2", c.Edge/1e6, "MPa", westergaard, cx, e, alpha, dT),
		working.New("σ_∞", "Held flat in both directions", "E · α · ΔT / (2 · (1 − ν))", c.Full/1e6, "MPa", source.Cite("mechanics", "plate bending"), e, alpha, dT, nu),
	}
	if in.Strength > 0 {
		worst := math.Max(math.Abs(c.Along), math.Max(math.Abs(c.Across), math.Abs(c.Edge)))
		use := working.New("σ/f", "Greatest of these, but held flat, over the flexural strength", "max(σ_x, σ_y, σ_e) / f", worst/in.Strength, "–", source.Cite("mechanics", ""),
			working.In("σ_x", math.Abs(c.Along)/1e6, "MPa", "along"), working.In("σ_y", math.Abs(c.Across)/1e6, "MPa", "across"), working.In("σ_e", math.Abs(c.Edge)/1e6, "MPa", "edge"),
			put(in.Known, "f", in.Strength/1e6, "MPa", "flexural strength"))
		lines = append(lines, judged(use, worst < in.Strength))
	}
	return lines
}

func (in CurlInput) boundLines(c CurlResult) []working.Line {
	alpha, dT := put(in.Known, "α", in.Expansion, "1/K", "expansion"), put(in.Known, "ΔT", in.Difference, "K", "top less bottom")
	h, length, width := put(in.Known, "h", in.Thickness, "m", "thickness"), put(in.Known, "L", in.Length, "m", "long side"), put(in.Known, "B", in.Width, "m", "short side")
	factor := "200"
	if in.Length <= 1.2*in.Width {
		factor = "228"
	}
	return []working.Line{
		working.New("w_0", "Corners above the middle if nothing held the slab", "−1000 · α · ΔT / h · (L² + B²) / 8", c.Corner*1e3, "mm", source.Cite("mechanics", "free curl"), alpha, dT, h, length, width),
		working.New("L_crit", "Eisenmann's critical length", factor+" · h · sqrt(E · α · |ΔT| / (1000 · h))", c.Critical, "m", source.Cite("eisenmann1979", "critical length"),
			h, alpha, dT, put(in.Known, "E", in.Modulus/1e6, "MPa", "modulus")).
			Beside("weight against full restraint", WeightLength(in.Thickness, in.Modulus, in.Expansion, in.Difference/in.Thickness, in.UnitWeight, in.Poisson), source.Cite("own", "statics"),
				"Statics gives about 181 where the printed factor is 200 or 228."),
		working.New("σ_g", "The most that the slab's weight can bend it over the length", "6 · γ · L² / (8 · h) / 1000", c.Weight/1e6, "MPa", source.Cite("mechanics", "statics"),
			put(in.Known, "γ", in.UnitWeight/1e3, "kN/m³", "unit weight"), length, h),
	}
}
