package job

import (
	"fmt"
	"math"

	"slabwright/concrete"
	"slabwright/flexure"
	"slabwright/plan"
	"slabwright/remedies"
	"slabwright/restraint"
	"slabwright/source"
)

// holding is what the slab as a whole can do and has still to do.
type holding struct {
	expansion        float64
	coldest, hottest float64
	left             []remedies.LeftAt
	tensile, modulus float64 // at 28 days, MPa
	friction         restraint.Friction
	curlDifference   float64 // of the worst night, K; negative curls edges up
	wheelSheet       string
	curlSheet        string
	frictionSheet    string
}

// holds works out, in closed form, what base friction, curl and the wheel do to the
// largest panel.
func (d *diagnosis) holds() {
	run := d.firstRun()
	if run == nil {
		d.lack("pours", "the concrete, the weather and the thickness of at least one pour", "so friction, curl and wheel stresses are not given")
		return
	}
	model := d.strengthModel(run.mix)
	d.hold.tensile, d.hold.modulus = model.Tensile(28), model.Modulus(28)
	panel := d.largestPanel()
	d.frictionOf(run, panel)
	d.curlOf(run, panel)
	d.wheelOf(panel)
}

// largestPanel is the panel with the longest side.
func (d *diagnosis) largestPanel() plan.Panel {
	best := d.panels[0]
	for _, p := range d.panels {
		if p.Length > best.Length {
			best = p
		}
	}
	return best
}

// frictionOf compares base friction with the strength of a sound panel: it shows
// whether friction alone could have cracked it.
func (d *diagnosis) frictionOf(run *pourRun, panel plan.Panel) {
	mu, _, _ := d.friction()
	long := d.longTerm(run.mix)
	const year = 365.0
	in := restraint.FrictionInput{ID: "friction", Title: "What base friction alone can do to panel " + panel.ID,
		Length: panel.Length, Thickness: d.slab.Thickness.Value, Friction: mu, UnitWeight: 1000 * d.unitWeight(),
		ShearStiffness: bedStiffness * 1e9, Modulus: 1e6 * d.hold.modulus, Strain: long.Shrinkage(year),
		Ageing: usualAgeing, Creep: long.Creep.Coefficient(long.Member, 7, year), Strength: 1e6 * d.hold.tensile}
	if bad := in.Check(); len(bad) > 0 {
		d.lack("ground", bad[0].Error(), "so base friction is not given")
		return
	}
	d.hold.friction = restraint.BaseFriction(in)
	d.hold.frictionSheet = in.ID
	d.book.Add(restraint.FrictionWorking(in))
}

// usualAgeing is Trost's ageing coefficient.
const usualAgeing = 0.8

// stripLength is the length that is held before any joint is cut: the long side of
// the pour.
func (d *diagnosis) stripLength(p *pourRun) float64 {
	low, high := plan.Ring(p.pour.Area).Box()
	length := math.Max(high.X-low.X, high.Y-low.Y)
	if p.limit != nil {
		length = math.Min(length, *p.limit)
	}
	return length
}

// curlOf works out the curl of the sharpest night of the run, when the top was
// coolest and driest against the underside.
func (d *diagnosis) curlOf(run *pourRun, panel plan.Panel) {
	worst := 0
	for i, g := range run.history.Gradient {
		if g < run.history.Gradient[worst] {
			worst = i
		}
	}
	m := run.history.At(run.history.Hours[worst])
	if m.E <= 0 {
		return
	}
	in := flexure.CurlInput{ID: "curl", Title: fmt.Sprintf("Curl of panel %s in its first week, at its sharpest %.0f h after placing", panel.ID, m.Hours),
		Length: panel.Length, Width: panel.Width, Thickness: d.slab.Thickness.Value, Modulus: 1e6 * m.E, Poisson: poisson,
		Support: 1e6 * d.support(), Expansion: run.mix.Expansion, Difference: m.Gradient, UnitWeight: 1000 * d.unitWeight(),
		Strength: 1e6 * m.Fct * concrete.FlexuralRatioEN(1000*d.slab.Thickness.Value)}
	if bad := in.Check(); len(bad) > 0 {
		d.lack("slabs[0]", bad[0].Error(), "so curl is not given")
		return
	}
	d.hold.curlDifference, d.hold.curlSheet = m.Gradient, in.ID
	d.book.Add(flexure.CurlWorking(in))
}

// poisson is Poisson's ratio of uncracked concrete, EN 1992-1-1 3.1.3(4); from memory.
const poisson = 0.2

// wheelOf compares the heaviest wheel at an edge with the bending strength of the
// slab.
func (d *diagnosis) wheelOf(panel plan.Panel) {
	load := d.job.Wheel.Load
	if load == nil {
		d.lack("wheel.load_kN", "the heaviest wheel", "so the wheel stress is not given")
		return
	}
	pressure := d.use(d.job.Wheel.Pressure, 0.8, "tyre pressure", " MPa", "not given; a lorry tyre", "wheel stress by a few per cent")
	in := flexure.WheelInput{ID: "wheel", Title: "Heaviest wheel on the slab", Load: 1000 * load.Value,
		Radius:    math.Sqrt(load.Value / 1000 / pressure / math.Pi),
		Thickness: d.slab.Thickness.Value, Modulus: 1e6 * d.hold.modulus, Poisson: poisson, Support: 1e6 * d.support(),
		Strength: 1e6 * d.hold.tensile * concrete.FlexuralRatioEN(1000*d.slab.Thickness.Value), Transfer: d.transfer()}
	if bad := in.Check(); len(bad) > 0 {
		d.lack("wheel", bad[0].Error(), "so the wheel stress is not given")
		return
	}
	d.book.Add(flexure.WheelWorking(in))
	d.loadSheet, d.hold.wheelSheet = in.ID, in.ID
	ratio := d.wheelRatio(in, load.Value)
	low, high := load.Bounds()
	lowest, highest := d.wheelRatio(in, low), d.wheelRatio(in, high)
	d.loadRatio = &source.Fact{Value: ratio, Low: &lowest, High: &highest, Known: source.Assumed}
}

// wheelRatio is the worst of interior, edge and corner stress over the bending
// strength.
func (d *diagnosis) wheelRatio(in flexure.WheelInput, kilonewtons float64) float64 {
	in.Load = 1000 * kilonewtons
	w := flexure.WheelStresses(in)
	return math.Max(w.Interior, math.Max(w.Edge, w.Corner)) / in.Strength
}

// transfer is the share of a wheel's load that a joint passes on: a quarter where
// the joints are dowelled, nothing where they are not or nobody knows. Our own
// judgement, on the careful side of half for a perfect joint.
func (d *diagnosis) transfer() float64 {
	for _, j := range d.slab.Joints {
		if j.Kind != plan.Isolation && !j.Transfer.Is("dowelled") {
			return 0
		}
	}
	if len(d.slab.Joints) == 0 {
		return 0
	}
	d.assume("load passed on by the dowelled joints", "a quarter", string(source.Assumed), "bars in place; looseness not measured", "edge and corner stress by a quarter")
	return 0.25
}
