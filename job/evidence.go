package job

import (
	"math"
	"time"

	"slabwright/causes"
	"slabwright/plan"
	"slabwright/site"
	"slabwright/source"
	"slabwright/walk"
)

// evidence gathers all that is known of one finding: its kind and what was seen
// there, its place on the plan, and the pour it lies in. What could not be used
// comes back as sentences.
func (d *diagnosis) evidence(f walk.Finding, r plan.Relation, sheet string) (causes.Evidence, []string) {
	e := causes.Evidence{Finding: f.ID, Exposure: d.exposure(), Frost: d.frost(), Recorded: d.recorded(f, r)}
	var unused []string
	add := func(observations []causes.Observation, faults []error) {
		e.Observations = append(e.Observations, observations...)
		for _, fault := range faults {
			unused = append(unused, fault.Error())
		}
	}
	if o := causes.FromKind(string(f.Kind), f.Cell); o != nil {
		add([]causes.Observation{*o}, nil)
	}
	if !lineLike(f.Kind) {
		e.Pointless = []string{"ends", "orientation", "spacing", "aspect", "slenderness", "embedded"}
		if causes.FromKind(string(f.Kind), f.Cell) == nil || f.Kind == walk.Curl {
			e.Pointless = append(e.Pointless, "pattern")
		}
	}
	if f.Kind == walk.JointNotOpen {
		add(idleJoint(f.Joint), nil)
	}
	add(causes.FromSeen(f.Seen, d.seenFacts(f)))
	add(causes.FromPlan(d.planFacts(f, r, sheet)), nil)
	add(causes.FromPour(d.pourFacts(f, r)))
	return e, unused
}

// idleJoint says what a joint that never opened tells by itself: movement that
// belongs to a line there went elsewhere. It is our own reading of the pattern.
func idleJoint(joint string) []causes.Observation {
	return []causes.Observation{
		{Variable: "pattern", State: "line", From: "seen", Known: source.Assumed, Text: "joint " + joint + " never opened: the line that belongs there is elsewhere or still to come"},
		{Variable: "location", State: "near-joint", From: "plan", Known: source.Recorded, Text: "it is the joint itself"},
	}
}

// seenFacts are the numbers read at the finding.
func (d *diagnosis) seenFacts(f walk.Finding) causes.SeenFacts {
	facts := causes.SeenFacts{Width: f.Width, Step: f.Step, Depth: f.Depth, Thickness: d.slab.Thickness,
		Cell: f.Cell, Lift: f.Lift, Rebound: f.Rebound}
	if cover := d.cover(); cover != nil && lineLike(f.Kind) {
		facts.Cover = cover
		facts.BarDepth = cover
	}
	if p := d.pourOf(middle(f)); p != nil && p.pour.Start != nil && f.FirstSeen != nil {
		age := f.FirstSeen.Sub(p.placed(middle(f))).Seconds()
		if age > 0 {
			facts.FirstSeen = &source.Fact{Value: age, Known: source.Recorded, By: f.SeenBy}
		}
	}
	return facts
}

// planFacts turns the relations worked out from the plan into what the ranking
// asks for.
func (d *diagnosis) planFacts(f walk.Finding, r plan.Relation, sheet string) causes.PlanFacts {
	facts := causes.PlanFacts{
		LineLength: r.Length, AngleToLongSide: r.Angle, PositionAlong: r.Along, EndsReaching: r.Reaching,
		PanelLength: r.PanelLength, PanelWidth: r.PanelWidth, Working: sheet, Known: source.Measured,
	}
	if d.slab.Thickness != nil {
		facts.Thickness = &d.slab.Thickness.Value
	}
	switch {
	case lineLike(f.Kind):
		facts.EndsReaching = d.endsAtJoints(r)
		d.linePlace(&facts, r)
		d.things(&facts, r)
		if share, ok := d.jointsWorking(r); ok {
			facts.JointsCrackedShare = &share
		}
	default:
		// a joint or a patch of surface has no ends, angle or corner of its own
		facts.AngleToLongSide, facts.EndsReaching, facts.PositionAlong, facts.LineLength = nil, nil, nil, nil
		facts.PanelLength, facts.PanelWidth = nil, nil
		d.otherPlace(&facts, f, r)
	}
	if r.AreaShare != nil && *r.AreaShare > wholePanelShare {
		whole := true
		facts.WholePanel = &whole
	}
	return facts
}

// wholePanelShare is the share of a panel from which a patch counts as all of it;
// our own judgement.
const wholePanelShare = 0.5

// endsAtJoints counts the ends of the line that reach an edge or a joint. The rim of
// a pit or drain is an edge of the slab; an end at a column or wall is told by the
// fixture instead.
func (d *diagnosis) endsAtJoints(r plan.Relation) *int {
	if len(r.Ends) == 0 {
		return r.Reaching
	}
	n := 0
	for _, e := range r.Ends {
		kind := d.fixtureKind(e.ID)
		if e.Reaches == "joint" || e.Reaches == "edge" || e.Reaches == "fixture" && (kind == plan.Pit || kind == plan.Drain) {
			n++
		}
	}
	return &n
}

// otherPlace fills in what the plan says of a joint or of a patch of surface.
func (d *diagnosis) otherPlace(facts *causes.PlanFacts, f walk.Finding, r plan.Relation) {
	if f.Joint != "" && f.Kind != walk.JointNotOpen {
		along, angle := 0.0, 0.0
		facts.DistanceToJoint, facts.AngleToNearestJoint, facts.Joint = &along, &angle, "joint "+f.Joint
	}
	if f.Kind == walk.JointNotOpen {
		if share, ok := d.jointsWorking(r); ok {
			facts.JointsCrackedShare = &share
		}
		return
	}
	d.wheels(facts, r)
	if len(f.Area) > 0 && r.Edge != nil {
		facts.DistanceToEdge = &r.Edge.Distance
	}
}

// linePlace fills in joints, edges, ends and spacing.
func (d *diagnosis) linePlace(facts *causes.PlanFacts, r plan.Relation) {
	near := r.Beside
	if near == nil {
		near = r.Joint
	}
	if near != nil {
		mean := near.Mean
		facts.DistanceToJoint, facts.AngleToNearestJoint, facts.Joint = &mean, near.Angle, "joint "+near.ID
	}
	if r.BesideEdge != nil && (near == nil || r.BesideEdge.Mean < near.Mean) {
		mean := r.BesideEdge.Mean
		facts.DistanceToJoint, facts.AngleToNearestJoint, facts.Joint = &mean, r.BesideEdge.Angle, "the free edge"
	}
	if r.Edge != nil && r.Edge.Distance > 0 {
		facts.DistanceToEdge = &r.Edge.Distance
	}
	if r.Corner != nil {
		facts.StartsAtInsideCorner = &r.Corner.Distance
		facts.InsideCorner = d.cornerName(r.Corner.Fixture)
	}
	if r.Cut != nil {
		joins := true
		facts.JoinsSidesThatMeet = &joins
	}
	if r.Pieces > 0 {
		pieces := r.Pieces
		facts.Lines = &pieces
	}
	if r.Spacing != nil {
		facts.LineSpacing, facts.SpacingVariation, facts.BarPitch = &r.Spacing.Mean, r.Spacing.CoV, r.Spacing.BarPitch
	}
}

// things fills in bars, ducts, fixtures, dowels and wheels.
func (d *diagnosis) things(facts *causes.PlanFacts, r plan.Relation) {
	if r.Bars != nil && r.Bars.Mean != nil {
		facts.NearestBarLine = r.Bars.Mean
	}
	if r.Ducts != nil {
		facts.ShareOnEmbeddedLine, facts.EmbeddedLine = &r.Ducts.Share, r.Ducts.ID
	}
	if r.Fixture != nil && !d.partedEdge(r.Fixture) {
		facts.DistanceToFixture, facts.Fixture = &r.Fixture.Distance, d.fixtureName(r.Fixture.ID)
		if r.Fixture.Distance <= fixtureReach {
			facts.FixtureIsolated = isolationState(r.Fixture.Isolated)
		}
	}
	if r.InLine != nil {
		facts.InLineWithJointAcross = &r.InLine.Distance
	}
	if r.DowelEnd != nil {
		away := r.DowelEnd.Mean
		facts.DistanceToDowelEnd = &away
	}
	facts.DistanceToDowelledOne = dowelledDistance(r)
	d.wheels(facts, r)
}

// dowelledDistance is how far a line runs from the nearest joint with bars, or from a
// crossing of two such joints.
func dowelledDistance(r plan.Relation) *float64 {
	if e := r.DowelEnd; e != nil {
		for _, near := range []*plan.NearLine{r.Beside, r.Joint} {
			if near != nil && near.ID == e.Joint {
				return &near.Mean
			}
		}
	}
	if r.Crossing != nil && r.Crossing.Dowelled != nil && *r.Crossing.Dowelled {
		return &r.Crossing.Distance
	}
	return nil
}

// partedEdge reports whether a fixture is a wall, building or old slab along the edge
// that a full strip parts from the slab: it holds nothing, and every crack that
// comes to that edge would be near it.
func (d *diagnosis) partedEdge(f *plan.NearFixture) bool {
	switch f.Kind {
	case plan.Wall, plan.Building, plan.OldSlab:
		return f.Isolated == "yes"
	}
	return false
}

// wheels says whether the finding lies in a wheel path. One that lies partly in it
// says neither.
func (d *diagnosis) wheels(facts *causes.PlanFacts, r plan.Relation) {
	switch {
	case r.Wheels != nil && r.Wheels.Share >= mostly:
		zero := 0.0
		facts.DistanceToWheelPath = &zero
	case r.Wheels != nil && r.Wheels.Share == 0:
		facts.DistanceToWheelPath = &r.Wheels.Distance
	}
	if d.job.Place.Traffic.Is("none") {
		none := true
		facts.NoTraffic = &none
	}
}

// mostly is the share of a finding that must lie in a wheel path to coincide with it.
const mostly = 0.5

// fixtureReach is how near a fixture must be for its isolation to bear on a
// finding, metres: the distance the guides give for lines near a column.
const fixtureReach = 1.0

func isolationState(isolated string) *string {
	words := map[string]string{"yes": "present", "no": "absent", "part": "absent"}
	if w, ok := words[isolated]; ok {
		return &w
	}
	return nil
}

// jointsWorking returns the share of the joints that could have taken this crack's
// movement which have cracked below the groove; ok is false when none of them was
// looked at. They are the joints of a crossing it lies at, or else those along it
// on its own panel and the next.
func (d *diagnosis) jointsWorking(r plan.Relation) (share float64, ok bool) {
	looked, opened := 0.0, 0.0
	for id := range d.jointsOf(r) {
		j := d.joint(id)
		if j == nil || j.Opened == nil {
			continue
		}
		looked++
		opened += openedShare[j.Opened.Value]
	}
	if looked == 0 {
		return 0, false
	}
	return opened / looked, true
}

// openedShare is how much of a joint works by the word of the walk.
var openedShare = map[string]float64{"yes": 1, "part": 0.5, "no": 0}

// jointsOf gathers the joints that could have taken the movement of a finding.
func (d *diagnosis) jointsOf(r plan.Relation) map[string]bool {
	own, next := map[string]bool{}, map[string]bool{}
	for _, p := range d.panels {
		if p.ID == r.Panel {
			for _, s := range p.Sides {
				if s.Joint != "" && d.along(s, r) {
					own[s.Joint] = true
				}
			}
		}
	}
	if len(own) == 0 && r.Crossing != nil && r.Crossing.Distance <= crossingReach {
		return map[string]bool{r.Crossing.Joints[0]: true, r.Crossing.Joints[1]: true}
	}
	for _, p := range d.panels {
		if !bounds(p, own) {
			continue
		}
		for _, s := range p.Sides {
			if s.Joint != "" && d.along(s, r) {
				next[s.Joint] = true
			}
		}
	}
	return next
}

// bounds reports whether a panel has one of these joints as a side.
func bounds(p plan.Panel, joints map[string]bool) bool {
	for _, s := range p.Sides {
		if joints[s.Joint] {
			return true
		}
	}
	return false
}

// along reports whether a side runs the finding's way, or the finding has no way.
func (d *diagnosis) along(s plan.Side, r plan.Relation) bool {
	if r.Direction == nil {
		return true
	}
	side := math.Atan2(s.To.Y-s.From.Y, s.To.X-s.From.X) * 180 / math.Pi
	apart := math.Abs(math.Mod(side-*r.Direction+360, 180))
	return math.Min(apart, 180-apart) <= alongWithin
}

// alongWithin is how far from parallel a joint may run and still take a crack's
// movement, degrees; our own judgement.
const alongWithin = 30.0

// pourFacts are what the record of the pour and the models say of the place.
func (d *diagnosis) pourFacts(f walk.Finding, r plan.Relation) causes.PourFacts {
	facts := causes.PourFacts{Thickness: d.slab.Thickness, Exposure: d.exposureState(), Ground: d.groundState(),
		LoadOverCapacity: d.loadRatio, LoadWorking: d.loadSheet}
	if !surface(f) {
		facts.Dowels, facts.DowelSkew, facts.DowelsBothWaysWithin = d.dowelFacts(r)
	}
	p := d.pourOf(middle(f))
	if p == nil {
		return facts
	}
	facts.WeatherWorking = p.dryingSheet
	facts.PeakEvaporation = p.peakFirstHours()
	facts.TemperatureDrop72h = p.temperatureDrop()
	if !surface(f) {
		d.sawFacts(&facts, f, r, p)
	}
	return facts
}

// sawFacts fills in the cut nearest to the finding: for a joint's own finding its
// own cut, for a line the joint it runs along, and else the latest cut among the
// sawn sides of the panel, which is what let the panel wait.
func (d *diagnosis) sawFacts(facts *causes.PourFacts, f walk.Finding, r plan.Relation, p *pourRun) {
	joint := f.Joint
	if joint == "" && r.Beside != nil && r.Beside.Mean <= besideReach {
		joint = r.Beside.ID
	}
	cut := d.cutOf(joint)
	if cut == nil && joint == "" {
		cut = d.latestCut(r.Panel)
	}
	if cut == nil || cut.Start == nil {
		return
	}
	hours := cut.Start.Sub(p.placedBeside(d.jointMiddle(cut.Joint))).Hours()
	facts.SawnAfterHours = &source.Fact{Value: hours, Known: source.Recorded}
	if p.wet != nil {
		placed := p.placedBeside(d.jointMiddle(cut.Joint))
		w := p.windowOfJoint(cut.Joint)
		facts.WindowClosesHours = hoursAfter(placed, w.closes)
		if !cut.Edge.Is("clean") { // an edge recorded as clean was not cut too soon
			facts.WindowOpensHours = hoursAfter(placed, w.opens)
		}
		facts.WindowWorking = p.windowSheet
	}
	if cut.Edge.Is("ravelled") && (f.Joint == cut.Joint) {
		facts.EdgesRavelled = &source.Choice{Value: "yes", Known: cut.Edge.Known}
	}
	if f.Kind == walk.Crack && f.FirstSeen != nil && joint == cut.Joint && f.FirstSeen.Before(*cut.Start) {
		facts.CrackBeforeSawing = &source.Choice{Value: "yes", Known: source.Recorded}
	}
	if cut.Saw.Is("early-entry") {
		facts.EarlyEntry = &source.Choice{Value: "yes", Known: cut.Saw.Known}
	}
	if j := d.joint(cut.Joint); j != nil && j.Groove != nil {
		facts.GrooveDepth = j.Groove
	} else {
		facts.GrooveDepth = cut.Depth
	}
}

// hoursAfter is a clock time in hours after placing, nil for never.
func hoursAfter(placed, t time.Time) *float64 {
	if t.IsZero() {
		return nil
	}
	h := t.Sub(placed).Hours()
	return &h
}

// besideReach is how near a line must run to a joint to be a crack beside it,
// metres; the published cases lie up to 0.6 m off.
const besideReach = 0.6

// dowelFacts says what is known of the bars at the nearest joint or crossing.
func (d *diagnosis) dowelFacts(r plan.Relation) (state *source.Choice, skew, bothWays *source.Fact) {
	if r.Crossing != nil && r.Crossing.Distance <= crossingReach && r.Crossing.Dowelled != nil && *r.Crossing.Dowelled {
		for _, id := range r.Crossing.Joints {
			j := d.joint(id)
			if j == nil || j.Dowels == nil || j.Dowels.FreeSide.Is("yes") {
				return nil, nil, nil
			}
			if c := j.Dowels.Clear; c != nil && (bothWays == nil || c.Value < bothWays.Value) {
				bothWays = c
			}
		}
		if bothWays != nil {
			return nil, nil, bothWays
		}
	}
	if r.Joint == nil || r.Joint.Distance > besideReach {
		return nil, nil, nil
	}
	j := d.joint(r.Joint.ID)
	if j == nil {
		return nil, nil, nil
	}
	if j.Dowels != nil {
		skew = j.Dowels.Skew
	}
	words := map[string]string{"none": "none", "interlock": "none", "dowelled": "ok", "tied": "tied-or-bonded"}
	if w, ok := words[j.Transfer.Or("")]; ok {
		state = &source.Choice{Value: w, Known: j.Transfer.Known}
	}
	return state, skew, nil
}

// crossingReach is how near a crossing must be for its bars to bear on a finding,
// metres: corner breaks at crossings reach about this far.
const crossingReach = 1.0

// recorded lists the facts on record that take causes off the list.
func (d *diagnosis) recorded(f walk.Finding, r plan.Relation) map[string]bool {
	facts := map[string]bool{}
	if d.job.Place.Frost.Is("none") {
		facts[causes.NoFrost] = true
	}
	if j := r.Joint; j != nil {
		if joint := d.joint(j.ID); joint != nil && (joint.Transfer.Is("none") || joint.Transfer.Is("interlock")) {
			facts[causes.NoBarsAtJoint] = true
		}
	}
	if f.FirstSeen != nil && winter(*f.FirstSeen, d.job.Place) {
		if p := d.pourOf(middle(f)); p != nil && p.pour.Start != nil && f.FirstSeen.Sub(*p.pour.Start) < 365*24*time.Hour {
			facts[causes.SeenInFirstWinter] = true
		}
	}
	return facts
}

// winter reports whether a date lies in the cold quarter of the site's hemisphere.
func winter(t time.Time, place site.Place) bool {
	month := t.Month()
	if place.Latitude != nil && place.Latitude.Value < 0 {
		return month >= time.June && month <= time.August
	}
	return month == time.December || month <= time.February
}

// middle returns the mean place of a finding.
func middle(f walk.Finding) plan.Point {
	var sum plan.Point
	n := 0.0
	points := f.Area
	for _, l := range f.Lines {
		points = append(points, l...)
	}
	for _, p := range points {
		sum.X, sum.Y, n = sum.X+p.X, sum.Y+p.Y, n+1
	}
	if n == 0 {
		return plan.Point{X: math.NaN(), Y: math.NaN()}
	}
	return plan.Point{X: sum.X / n, Y: sum.Y / n}
}

// surface reports whether a finding is a patch of surface: saw and dowels have no
// part in it.
func surface(f walk.Finding) bool { return len(f.Lines) == 0 && f.Joint == "" }

// lineLike reports whether a finding is a crack or a set of cracks.
func lineLike(k walk.Kind) bool {
	switch k {
	case walk.Crack, walk.ShortCracks, walk.ParallelSet, walk.CornerBreak, walk.Shattered:
		return true
	}
	return false
}
