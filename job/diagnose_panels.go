package job

import (
	"fmt"
	"math"
	"sort"
	"strings"
	"time"

	"slabwright/concrete"
	"slabwright/earlyage"
	"slabwright/plan"
	"slabwright/report"
	"slabwright/site"
	"slabwright/source"
	"slabwright/working"
)

// doubt is how far the uncertain facts of a pour may be off: what the job says of
// each, and the usual doubt where it says nothing.
func (p *pourRun) doubt() earlyage.Doubt {
	d := earlyage.DefaultDoubt
	give := func(key string, f *source.Fact, scale float64) {
		if f == nil {
			return
		}
		d = d.Given(key, scaled(*f, scale))
	}
	give("placing", p.pour.Concrete, 1)
	give("thickness", p.d.slab.Thickness, 1)
	give("subgrade", p.d.job.Ground.Support, 1e-3)
	for _, m := range p.d.job.Mixes {
		if m.ID == p.pour.Mix {
			give("binder", m.Cement, 1)
			give("expansion", m.Expansion, 1)
			give("water_binder", waterBinder(m), 1)
		}
	}
	return d
}

// Cylinders up to this age speak of the first days and weigh the samples; older ones
// replace the nominal strength. They are taken as cured in a tank at 20 °C (EN 12390-2,
// from memory).
const (
	youngCylinder   = 2.0 // days
	tankTemperature = 20.0
)

// scaled is a fact in another unit.
func scaled(f source.Fact, by float64) source.Fact {
	times := func(v *float64) *float64 {
		if v == nil {
			return nil
		}
		x := *v * by
		return &x
	}
	f.Value *= by
	f.Low, f.High = times(f.Low), times(f.High)
	return f
}

// waterBinder is what is known of water over binder: as stated, or from the contents
// with the range of the water.
func waterBinder(m site.Mix) *source.Fact {
	if m.Water != nil && m.Cement != nil && m.Cement.Value > 0 {
		f := scaled(*m.Water, 1/m.Cement.Value)
		return &f
	}
	return m.WaterCement
}

// observed is what was measured at the slab after placing.
func (p *pourRun) observed() earlyage.Observed {
	var o earlyage.Observed
	for _, t := range p.pour.Temps {
		o.Temperatures = append(o.Temperatures, earlyage.LoggedTemperature{At: t.At, Depth: t.Depth, Value: t.Temp.Value})
	}
	for _, m := range p.d.job.Mixes {
		for _, c := range m.Cylinders {
			if m.ID == p.pour.Mix && c.AgeDays <= youngCylinder {
				tank := tankTemperature
				o.Cylinders = append(o.Cylinders, earlyage.CylinderResult{At: p.pour.Start.Add(time.Duration(c.AgeDays * 24 * float64(time.Hour))),
					Strength: c.Strength.Value, CuredAt: &tank})
			}
		}
	}
	if p.pour.InitialSet != nil {
		o.InitialSets = append(o.InitialSets, earlyage.SetTime{At: *p.pour.InitialSet})
	}
	if p.pour.FinalSet != nil {
		o.FinalSets = append(o.FinalSets, earlyage.SetTime{At: *p.pour.FinalSet})
	}
	for _, c := range p.pour.TrialCuts {
		if c.At == nil || c.Edge == nil {
			continue
		}
		saw, ok := earlyage.SawFor(sawKey(c.Saw), sawHardness(p.mix.AggregateKind))
		if ok {
			o.TrialCuts = append(o.TrialCuts, earlyage.TrialCut{At: *c.At, Saw: saw, Clean: c.Edge.Is("clean")})
		}
	}
	return o
}

// sawKey is the saw of a record as the table of saws names it.
func sawKey(saw *source.Choice) string {
	if saw.Is("early-entry") {
		return "early-entry"
	}
	return "ordinary"
}

// measured says what the observations did to the answer.
func (p *pourRun) measured() {
	cal := p.members.Calibration(p.wet.Saw)
	if cal.Observations == 0 {
		return
	}
	fit := &report.MeasuredFit{Members: cal.Effective, Warnings: cal.Warnings, Working: p.windowSheet}
	if n := len(p.pour.Temps); n > 0 {
		fit.Used = append(fit.Used, plural(n, "logged temperature"))
	}
	if p.pour.InitialSet != nil || p.pour.FinalSet != nil {
		fit.Used = append(fit.Used, "measured set")
	}
	if n := len(p.pour.TrialCuts); n > 0 {
		fit.Used = append(fit.Used, plural(n, "trial cut"))
	}
	var unknowns []string
	for _, m := range cal.Moved {
		if m.SpreadBefore > 0 && math.Abs(m.MeanAfter-m.MeanBefore) > halfSpread*m.SpreadBefore {
			unknowns = append(unknowns, fmt.Sprintf("%s from %s to %s", m.Name, figure(nearZero(m.MeanBefore, m.SpreadBefore), m.Unit), figure(m.MeanAfter, m.Unit)))
		}
	}
	fit.Text = fmt.Sprintf("The measurements leave %.0f of %d samples counting.", cal.Effective, cal.Members)
	if !cal.OpensBefore.IsZero() && !cal.OpensAfter.IsZero() {
		fit.Text += " They move the opening of the cut window " + moved(cal.OpensAfter.Sub(cal.OpensBefore)) + "."
	}
	if len(unknowns) > 0 {
		fit.Text += " Moved most: " + strings.Join(unknowns, "; ") + "."
	}
	p.day.Measured = fit
}

// nearZero writes a mean that is nothing beside its spread as zero.
func nearZero(mean, spread float64) float64 {
	if math.Abs(mean) < 0.01*spread {
		return 0
	}
	return mean
}

// moved says a shift of a clock time in words.
func moved(by time.Duration) string {
	minutes := by.Round(time.Minute).Minutes()
	switch {
	case minutes == 0:
		return "not at all"
	case minutes < 0:
		return fmt.Sprintf("%.0f min earlier", -minutes)
	}
	return fmt.Sprintf("%.0f min later", minutes)
}

// halfSpread is the share of its spread an unknown must move by to be named.
const halfSpread = 0.5

// sensitivities lists which unknown moves the window most.
func (p *pourRun) sensitivities() {
	rows := p.members.Sensitivities(p.wet.Saw, p.wet.Risk)
	for _, s := range rows {
		share := math.Max(zeroIfUnknown(s.OpensShare), zeroIfUnknown(s.ClosesShare))
		if share < leastShare {
			continue
		}
		p.day.Moves = append(p.day.Moves, report.SensitivityRow{What: s.Name, Low: figure(s.Low, s.Unit), High: figure(s.High, s.Unit),
			Known: string(s.Known), Opens: zeroIfUnknown(s.Opens), Closes: zeroIfUnknown(s.Closes), Share: share})
	}
	sort.SliceStable(p.day.Moves, func(a, b int) bool { return p.day.Moves[a].Share > p.day.Moves[b].Share })
	if len(p.day.Moves) > shownMoves {
		p.day.Moves = p.day.Moves[:shownMoves]
	}
}

// What is shown of the unknowns.
const (
	leastShare = 0.01
	shownMoves = 8
)

func zeroIfUnknown(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}

func figure(v float64, unit string) string {
	if unit == "-" {
		unit = ""
	}
	return working.Figure(v, 3) + unitText(unit)
}

func unitText(unit string) string {
	if unit == "" {
		return ""
	}
	return " " + unit
}

// panelWindows gives each panel of the pour its window by the time concrete came to
// it, and the order in which its joints are best cut.
func (p *pourRun) panelWindows(model earlyage.Pour) error {
	panels := p.ownPanels()
	if len(panels) == 0 {
		return nil
	}
	placed := make([]time.Time, len(panels))
	for i, panel := range panels {
		placed[i] = p.placed(panel.Centroid)
	}
	if model.Count == 0 || model.Count > panelMembers {
		model.Count = panelMembers
	}
	wet, err := earlyage.PanelWindows(p.d.ctx, model, placed, p.wet.Saw, p.wet.Risk)
	if err != nil {
		return err
	}
	p.panelWet = map[string]*earlyage.CutWindow{}
	for i := range panels {
		p.panelWet[panels[i].ID] = &wet[i]
	}
	order := p.cutOrder(panels, placed)
	for i, panel := range panels {
		w := &wet[i]
		row := report.PanelWindow{Panel: panel.ID, Placed: placed[i], Order: order[panel.ID], Wet: p.windowOf(w, "wet")}
		row.Early = p.earlyOf(w, placed[i])
		for h := 0.0; h <= curveHours; h += curveStep {
			at := placed[i].Add(time.Duration(h * float64(time.Hour)))
			c := w.At(at)
			row.Curve = append(row.Curve, report.CutChance{At: at, Hours: h, Ready: c.Ready, Cracked: c.Cracked})
		}
		p.day.Panels = append(p.day.Panels, row)
	}
	sort.SliceStable(p.day.Panels, func(a, b int) bool { return p.day.Panels[a].Order < p.day.Panels[b].Order })
	return nil
}

// panelMembers is how many samples each placing time of a pour is run with: the
// panels differ by their clock, the spread about it is that of the whole pour.
const panelMembers = 24

// jointWindow is the window of one joint: from when the younger of the panels beside it
// can be cut until the older of them is likely to have cracked. Without panels it is
// that of the pour.
type jointWindow struct {
	opens, closes time.Time // zero: never
	windows       []*earlyage.CutWindow
}

func (p *pourRun) windowOfJoint(joint string) jointWindow {
	var w jointWindow
	for _, panel := range p.d.panels {
		own := p.panelWet[panel.ID]
		if own == nil || !bounds(panel, map[string]bool{joint: true}) {
			continue
		}
		w.windows = append(w.windows, own)
	}
	if len(w.windows) == 0 {
		w.windows = []*earlyage.CutWindow{p.wet}
	}
	never := false
	for _, own := range w.windows {
		never = never || own.Opens.IsZero()
		if own.Opens.After(w.opens) {
			w.opens = own.Opens
		}
		if !own.Closes.IsZero() && (w.closes.IsZero() || own.Closes.Before(w.closes)) {
			w.closes = own.Closes
		}
	}
	if never {
		w.opens = time.Time{}
	}
	return w
}

// cracked is the chance that the slab beside the joint has cracked elsewhere by a
// time: that of the panel further on.
func (w jointWindow) cracked(t time.Time) float64 {
	most := 0.0
	for _, own := range w.windows {
		most = math.Max(most, own.At(t).Cracked)
	}
	return most
}

// state is what the clock says of a cut at a time, in the words for a cut that was
// made.
func (w jointWindow) state(t time.Time) string {
	switch {
	case w.opens.IsZero() || t.Before(w.opens):
		return string(earlyage.TooSoon)
	case w.closes.IsZero() || !t.After(w.closes):
		return "in the window"
	case w.cracked(t) >= missedFrom:
		return string(earlyage.Missed)
	}
	return string(earlyage.Late)
}

// missedFrom is the chance of a crack elsewhere from which a joint counts as missed.
const missedFrom = 0.5

// How far and how finely the chances of a panel are kept, hours.
const (
	curveHours = 36.0
	curveStep  = 0.5
)

// ownPanels are the panels that lie in the pour, along its long side.
func (p *pourRun) ownPanels() []plan.Panel {
	if len(p.pour.Area) < 3 {
		return nil
	}
	ring := plan.Ring(p.pour.Area)
	var own []plan.Panel
	for _, panel := range p.d.panels {
		if ring.Contains(panel.Centroid) {
			own = append(own, panel)
		}
	}
	low, high := ring.Box()
	alongX := high.X-low.X >= high.Y-low.Y
	sort.SliceStable(own, func(a, b int) bool {
		if alongX {
			return own[a].Centroid.X < own[b].Centroid.X
		}
		return own[a].Centroid.Y < own[b].Centroid.Y
	})
	return own
}

// cutOrder numbers the panels of a strip in the order in which the joint at the far
// side of each is best cut: the middle first, then the quarters.
func (p *pourRun) cutOrder(panels []plan.Panel, placed []time.Time) map[string]int {
	strip := make([]earlyage.Panel, len(panels))
	for i, panel := range panels {
		strip[i] = earlyage.Panel{ID: panel.ID, Placed: placed[i], Length: panel.Width}
		if along := alongStrip(panels, i); along > 0 {
			strip[i].Length = along
		}
	}
	order := map[string]int{}
	for i, c := range earlyage.BestCutOrder(strip, perCut) {
		order[c.Between[0]] = i + 1
	}
	order[panels[len(panels)-1].ID] = len(panels) // the last has no joint of its own
	return order
}

// perCut is how long a joint takes to saw; common practice for some 5 m.
const perCut = 25 * time.Minute

// alongStrip is the length of a panel along its strip: half way to its neighbours.
func alongStrip(panels []plan.Panel, i int) float64 {
	switch {
	case len(panels) < 2:
		return 0
	case i == 0:
		return panels[0].Centroid.To(panels[1].Centroid)
	}
	return panels[i-1].Centroid.To(panels[i].Centroid)
}

// earlyOf is the early-entry window of a panel: opened as long before the wet saw's
// as for the whole pour, closed with it.
func (p *pourRun) earlyOf(w *earlyage.CutWindow, placed time.Time) report.Window {
	out := p.windowOf(w, "early-entry")
	if w.Opens.IsZero() || p.early.Opens.IsZero() || p.wet.Opens.IsZero() {
		out.Opens, out.OpensLow, out.OpensHigh, out.Best = nil, nil, nil, nil
		return out
	}
	sooner := p.wet.Opens.Sub(p.early.Opens)
	back := func(t *time.Time) *time.Time {
		if t == nil {
			return nil
		}
		u := t.Add(-sooner)
		return &u
	}
	out.Opens, out.OpensLow, out.OpensHigh, out.Best = back(out.Opens), back(out.OpensLow), back(out.OpensHigh), back(out.Best)
	out.Why = p.early.Why
	return out
}

// cylinders replaces the nominal strength by the test results of the mix, the latest
// of 28 days or less; how is said among the assumptions.
func (d *diagnosis) withCylinders(model concrete.StrengthModel, mix string) concrete.StrengthModel {
	var best *site.Cylinder
	for _, m := range d.job.Mixes {
		if m.ID != mix {
			continue
		}
		for i := range m.Cylinders {
			if c := &m.Cylinders[i]; c.AgeDays > youngCylinder && c.AgeDays <= 28 && (best == nil || c.AgeDays > best.AgeDays) {
				best = c
			}
		}
	}
	if best == nil {
		return model
	}
	fitted, err := concrete.WithCylinders(model, best.Strength.Value, best.AgeDays)
	if err != nil {
		return model
	}
	d.assume("strength", fmt.Sprintf("from cylinders, %s MPa at %s days", working.Figure(best.Strength.Value, 3), working.Figure(best.AgeDays, 2)),
		string(best.Strength.Known), "tests replace the nominal strength", "strength in proportion")
	return fitted
}
