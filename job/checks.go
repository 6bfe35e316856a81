package job

import (
	"context"
	"crypto/sha256"
	"fmt"
	"math"

	"slabwright/checks"
	"slabwright/ground"
	"slabwright/plan"
	"slabwright/site"
	"slabwright/source"
)

// Checks works out every check the job's facts allow for its first slab: loads,
// fatigue, punching, joints, steel, ground and surface, with the working of each.
// What nobody knows is put in as a default and shown as one; a job without thickness,
// strength or any load lacks what every check needs.
func Checks(ctx context.Context, j *Job, say Progress) (*checks.Calc, error) {
	if say != nil {
		say("facts", 0.05)
	}
	in, err := j.ChecksInput()
	if err != nil {
		return nil, err
	}
	if say != nil {
		say("checks", 0.2)
	}
	c, err := checks.NewCalc(ctx, j.calcHead(), in)
	if err != nil {
		return nil, fmt.Errorf("the checks cannot be made:\n%w", err)
	}
	return c, nil
}

// calcHead is the title block of the job's calculation. Its date is that of the last
// walk, or else the pour's: never the clock's, so that the same job gives the same
// paper.
func (j *Job) calcHead() checks.Head {
	h := checks.Head{Job: j.Number, Calc: "C1", Title: j.Title, Subject: "Checks of the slab " + j.Slabs[0].Name, Revision: j.Revision, By: j.Author,
		Version: ProgramVersion, Draft: j.Revision == ""}
	if h.Job == "" {
		h.Job = j.ID
	}
	if data, err := j.Encode(); err == nil { // the job alone: no weather goes into the checks
		h.DataHash = fmt.Sprintf("%x", sha256.Sum256(data))
	}
	if n := len(j.Walks); n > 0 {
		h.Date = j.Walks[n-1].Date
	} else if len(j.Pours) > 0 && j.Pours[0].Start != nil {
		h.Date = *j.Pours[0].Start
	}
	return h
}

// ChecksInput turns the facts of the job's first slab into the input of its checks.
// The error is a [NotKnown] that names what is lacking.
func (j *Job) ChecksInput() (checks.Input, error) {
	if len(j.Slabs) == 0 {
		return checks.Input{}, NotKnown{"the job has no slab yet: give its outline in slabs[0].outline_m"}
	}
	slab := j.Slabs[0]
	panels, err := slab.Panels()
	if err != nil {
		return checks.Input{}, fmt.Errorf("the slab cannot be divided into panels: %w", err)
	}
	code, ok := checks.CodeOf(j.Basis.Code)
	if !ok {
		return checks.Input{}, NotKnown{fmt.Sprintf("basis.code %q has no checks here; EN 1992-1-1, ACI and AS 3600 have", j.Basis.Code)}
	}
	b := checksBridge{j: j, slab: slab, use: j.use(), external: !j.Place.Exposure.Is("indoor")}
	b.panel = longest(panels)
	in := checks.Input{Code: code, Loads: b.loads()}
	if in.Slab, err = b.slabOf(); err != nil {
		return in, err
	}
	if in.Concrete, err = b.concrete(); err != nil {
		return in, err
	}
	if len(in.Loads) == 0 {
		return in, NotKnown{"no load is known: give loads[] (wheels, axles, posts, lines, goods), or wheel.load_kN"}
	}
	in.Ground, in.Steel = b.ground(), b.steel()
	in.Use = b.useOf(in.Slab.Thickness.Value)
	in.Joint = b.joint()
	return in, nil
}

// use is what the job says of its use; never nil.
func (j *Job) use() *site.Use {
	if j.Use != nil {
		return j.Use
	}
	return &site.Use{}
}

// checksBridge reads the facts of one slab.
type checksBridge struct {
	j        *Job
	slab     plan.Slab
	use      *site.Use
	panel    plan.Panel
	external bool
}

// standing is a fact put in where nobody knows it, with the reason.
func standing(value, low, high float64, why string) source.Fact {
	return source.Fact{Value: value, Low: &low, High: &high, Known: source.Default, Note: why}
}

// drawn is a length read off the plan.
func drawn(v float64) source.Fact {
	return source.Fact{Value: v, Known: source.Recorded, Note: "from the plan"}
}

// factOr is a fact of the job, or the standing one.
func factOr(f *source.Fact, or source.Fact) source.Fact {
	if f != nil {
		return *f
	}
	return or
}

func longest(panels []plan.Panel) plan.Panel {
	best := panels[0]
	for _, p := range panels {
		if p.Length > best.Length {
			best = p
		}
	}
	return best
}

func (b *checksBridge) slabOf() (checks.Slab, error) {
	thickness := b.slab.Thickness
	if thickness == nil {
		thickness = b.j.Planned.Thickness
	}
	if thickness == nil {
		return checks.Slab{}, NotKnown{"the thickness is not known: give slabs[0].thickness_m, or planned.thickness_m"}
	}
	return checks.Slab{Thickness: *thickness, Length: drawn(b.panel.Length), Width: drawn(b.panel.Width)}, nil
}

func (b *checksBridge) concrete() (checks.Concrete, error) {
	for _, m := range b.j.Mixes {
		if m.Strength == nil {
			continue
		}
		c := checks.Concrete{Strength: *m.Strength, Poisson: standing(poisson, 0.15, 0.25, "EN 1992-1-1 3.1.3(4)"),
			UnitWeight: standing(24, 23, 25, "usual of normal concrete"), Expansion: factOr(m.Expansion, standing(1e-5, 0.8e-5, 1.3e-5, "usual; the stone decides"))}
		if m.Density != nil {
			w := *m.Density
			w.Value, w.Low, w.High = w.Value*gravity/1000, nil, nil
			c.UnitWeight = w
		}
		c.Shrinkage = b.shrinkage()
		return c, nil
	}
	return checks.Concrete{}, NotKnown{"the strength of the concrete is not known: give mixes[0].strength_MPa"}
}

// shrinkage is the mean drying shrinkage to come, in plain strain.
func (b *checksBridge) shrinkage() source.Fact {
	f := factOr(b.use.Shrinkage, standing(400, 250, 600, "usual of a slab of ordinary concrete on ground over the years"))
	f.Value *= 1e-6
	for _, end := range []**float64{&f.Low, &f.High} {
		if *end != nil {
			v := **end * 1e-6
			*end = &v
		}
	}
	return f
}

func (b *checksBridge) ground() checks.Ground {
	g := b.j.Ground
	out := checks.Ground{CBR: g.CBR, Base: "granular"}
	switch {
	case g.Support != nil:
		out.Support = *g.Support
	case g.CBR != nil:
		k := ground.SubgradeFromCBR(g.CBR.Value)
		out.Support = source.Fact{Value: k, Known: source.Assumed, Note: "from the bearing ratio by IAN 73/06; the scatter is a factor of two"}
	default:
		k := ground.DefaultSupport().Modulus
		out.Support = standing(k, k/2, 2*k, "not measured; a bearing ratio of about 6 %")
	}
	if g.Base.Is("stabilised") {
		out.Base = "stabilised"
	}
	f := usualFriction(g)
	out.Friction = factOr(g.Friction, standing(f.Value, f.Low, f.High, "not measured; "+f.Base))
	return out
}

// joint is the kind of joint the slab has most of, dowels from the first that says
// them.
func (b *checksBridge) joint() checks.Joint {
	count := map[checks.Transfer]int{}
	var dowels *plan.Dowels
	for i := range b.slab.Joints {
		joint := &b.slab.Joints[i]
		if joint.Kind == plan.Isolation {
			continue
		}
		t := checks.Transfer(joint.Transfer.Or(string(checks.NoTransfer)))
		count[t]++
		if t == checks.Dowelled && dowels == nil && joint.Dowels != nil && joint.Dowels.Diameter != nil && joint.Dowels.Spacing != nil {
			dowels = joint.Dowels
		}
	}
	out := checks.Joint{Transfer: checks.NoTransfer, Spacing: drawn(b.panel.Length), Filler: b.use.Filler, FillWidth: b.use.FillWidth,
		Cooling: factOr(b.use.Cooling, b.cooling())}
	most := 0
	for _, t := range []checks.Transfer{checks.NoTransfer, checks.Interlock, checks.Keyed, checks.Tied, checks.Dowelled} {
		if count[t] > most {
			out.Transfer, most = t, count[t]
		}
	}
	if out.Transfer == checks.Dowelled {
		if dowels == nil {
			out.Transfer = checks.Interlock // bars nobody has described count for nothing
			return out
		}
		out.Dowels = &checks.Dowels{Diameter: *dowels.Diameter, Spacing: *dowels.Spacing, Length: factOr(dowels.Length, standing(0.4, 0.3, 0.5, "not given; usual")),
			Support: standing(300, 81, 407, "not measured; a fitted number"), Yield: standing(250, 235, 500, "not given; plain bars")}
	}
	return out
}

// cooling is the fall of the mean temperature since the joints formed, where nobody
// knows it. Common practice, no source.
func (b *checksBridge) cooling() source.Fact {
	if b.external {
		return standing(25, 15, 40, "usual outdoors from a warm day of placing to winter")
	}
	return standing(10, 5, 15, "usual indoors from placing to the building's own temperature")
}

func (b *checksBridge) steel() *checks.Steel {
	for _, z := range b.slab.Steel {
		if z.Diameter == nil || z.PitchX == nil || z.Cover == nil {
			continue
		}
		free := drawn(b.panel.Length)
		if z.AtJoints.Is("continuous") {
			free = drawn(span(b.slab.Outline))
			free.Note = "from the plan: steel through the joints ties the panels to one"
		}
		return &checks.Steel{Diameter: *z.Diameter, Spacing: *z.PitchX, Cover: *z.Cover, Free: free,
			Yield: factOr(b.use.BarYield, standing(500, 450, 550, "not given; usual of mesh and ribbed bars")), Held: b.use.Held.Is("yes")}
	}
	return nil
}

// span is the greater side of the box round an outline.
func span(outline []plan.Point) float64 {
	low, high := outline[0], outline[0]
	for _, p := range outline {
		low.X, low.Y = math.Min(low.X, p.X), math.Min(low.Y, p.Y)
		high.X, high.Y = math.Max(high.X, p.X), math.Max(high.Y, p.Y)
	}
	return math.Max(high.X-low.X, high.Y-low.Y)
}

// Gradients put in where nobody knows how warm or cold the top gets, K per metre of
// thickness: outdoors by the sun and on a clear night with a dry top, indoors by
// drying alone. Common practice, no source.
const (
	sunGradient, sunLow, sunHigh          = 45.0, 25.0, 70.0
	nightGradient, nightLow, nightHigh    = 45.0, 20.0, 80.0
	dryingGradient, dryingLow, dryingHigh = 30.0, 10.0, 60.0
)

func (b *checksBridge) useOf(thickness float64) checks.Use {
	u := checks.Use{Class: b.use.Class.Or(""), Exposure: b.use.Exposure.Or(""), Control: b.use.Control.Or(""), Hot: b.use.Hot, Cold: b.use.Cold, Residual: b.use.Residual}
	put := func(to **source.Fact, g, low, high float64, why string) {
		if *to == nil {
			f := standing(g*thickness, low*thickness, high*thickness, why)
			*to = &f
		}
	}
	if b.external {
		put(&u.Hot, sunGradient, sunLow, sunHigh, "45 K per metre of thickness: usual in the sun")
		put(&u.Cold, nightGradient, nightLow, nightHigh, "45 K per metre of thickness: a clear night and a dry top")
		return u
	}
	put(&u.Cold, dryingGradient, dryingLow, dryingHigh, "30 K per metre of thickness: drying of the top indoors")
	return u
}

// loads are those of the job, or its one heaviest wheel. A contact pressure nobody
// knows is put in.
func (b *checksBridge) loads() []checks.Load {
	pressure := func(f *source.Fact) *source.Fact {
		p := factOr(f, standing(0.8, 0.6, 1.0, "not given; a lorry tyre"))
		return &p
	}
	if len(b.j.Loads) == 0 {
		w := b.j.Wheel
		if w.Load == nil {
			return nil
		}
		return []checks.Load{{ID: "wheel", Name: "Heaviest wheel", Kind: checks.Wheel, Force: w.Load, Pressure: pressure(w.Pressure)}}
	}
	var list []checks.Load
	for _, l := range b.j.Loads {
		out := checks.Load{ID: l.ID, Name: l.Name, Kind: checks.Kind(l.Kind), Force: l.Force, PerMetre: l.PerMetre, PerArea: l.PerArea, Wheels: l.Wheels,
			Pressure: l.Pressure, Track: l.Track, Pair: l.Pair, PlateX: l.PlateX, PlateY: l.PlateY, Pitch: l.Pitch, Back: l.Back, Passes: l.Passes}
		if out.Kind == checks.Wheel || out.Kind == checks.Axle {
			out.Pressure = pressure(l.Pressure)
		}
		for _, at := range l.At {
			out.Places = append(out.Places, checks.Place(at))
		}
		list = append(list, out)
	}
	return list
}
