package job

import (
	"fmt"
	"math"
	"sync"
	"time"

	"slabwright/plan"
	"slabwright/restraint"
	"slabwright/source"
)

// planInputs are the facts of a slab in plan as the replay takes them. A change to one
// of them is a slab on which one thing was done otherwise.
type planInputs struct {
	slab     plan.Slab
	pours    []*planPour
	start    time.Time          // hour 0: the first truck
	sawn     map[string]float64 // hour at which each joint was sawn; absent: never
	taken    restraint.Taken
	base     restraint.Base
	shrink   float64 // share of the shrinkage that comes, 1 as it is
	scatter  float64 // coefficient of variation of the strength over the plan
	until    float64 // hours that the histories reach
	settings restraint.Settings
}

// planChange makes one thing otherwise.
type planChange func(*planInputs)

// cutAt saws a joint at another hour.
func cutAt(joint string, hour float64) planChange {
	return func(in *planInputs) { in.sawn[joint] = hour }
}

// cutInTime saws every joint at an hour after its concrete was placed, if it was sawn
// later than that.
func cutInTime(afterPlacing float64) planChange {
	return func(in *planInputs) {
		for _, j := range in.slab.Joints {
			if j.Kind != plan.Sawn {
				continue
			}
			best := in.placedAt(middleOfPath(j.Path)) + afterPlacing
			if was, ok := in.sawn[j.ID]; !ok || was > best {
				in.sawn[j.ID] = best
			}
		}
	}
}

// jointAdded adds a joint, sawn at an hour if it is a sawn one.
func jointAdded(j plan.Joint, hour float64) planChange {
	return func(in *planInputs) {
		in.slab.Joints = append(append([]plan.Joint(nil), in.slab.Joints...), j)
		if j.Kind == plan.Sawn {
			in.sawn[j.ID] = hour
		}
	}
}

// dowelsClear leaves the dowels out within a distance of each crossing.
func dowelsClear(metres float64) planChange {
	return dowelsAs(func(d *plan.Dowels) { d.Clear = &source.Fact{Value: metres, Known: source.Assumed} })
}

// dowelsFree lets the dowels move sideways.
func dowelsFree() planChange {
	return dowelsAs(func(d *plan.Dowels) { d.FreeSide = &source.Choice{Value: "yes", Known: source.Assumed} })
}

func dowelsAs(change func(*plan.Dowels)) planChange {
	return func(in *planInputs) {
		in.slab.Joints = append([]plan.Joint(nil), in.slab.Joints...)
		for i := range in.slab.Joints {
			if d := in.slab.Joints[i].Dowels; d != nil {
				own := *d
				change(&own)
				in.slab.Joints[i].Dowels = &own
			}
		}
	}
}

// isolated puts a strip round a fixture.
func isolated(fixture string) planChange {
	return func(in *planInputs) {
		in.slab.Fixtures = append([]plan.Fixture(nil), in.slab.Fixtures...)
		for i := range in.slab.Fixtures {
			if in.slab.Fixtures[i].ID == fixture {
				in.slab.Fixtures[i].Isolated = &source.Choice{Value: "yes", Known: source.Assumed}
			}
		}
	}
}

// lessShrinkage leaves only a share of the shrinkage, 1 all of it.
func lessShrinkage(share float64) planChange {
	return func(in *planInputs) { in.shrink = share }
}

// replayStart is the clock of hour 0: the start of the first pour that could be followed.
func (d *diagnosis) replayStart() time.Time {
	var start time.Time
	for _, p := range d.pours {
		if p.history != nil && (start.IsZero() || p.pour.Start.Before(start)) {
			start = *p.pour.Start
		}
	}
	return start
}

// planInputs gathers what the replay needs, followed on to so many hours after the first
// truck. It fails with [NotKnown] where a pour could not be followed.
func (d *diagnosis) planInputs(until float64) (*planInputs, error) {
	in := &planInputs{slab: d.slab, start: d.replayStart(), shrink: 1, until: until, sawn: map[string]float64{}, scatter: usualScatter}
	for _, p := range d.pours {
		if p.history == nil {
			return nil, NotKnown{"the replay needs the clock, the mix and the weather of every pour; pour " + p.pour.Name + " lacks one of them"}
		}
	}
	if len(d.pours) == 0 {
		return nil, NotKnown{"the replay needs a pour with its clock, mix and weather"}
	}
	var err error
	if in.pours, err = d.longHistories(in.start, until); err != nil {
		return nil, err
	}
	d.sawnHours(in)
	in.taken = restraint.UsualTaken(d.slab.Thickness.Value, in.sawnAt)
	mu, _, _ := d.friction()
	in.base = restraint.Base{Stiffness: bedStiffness * 1e9, Friction: mu, UnitWeight: 1000 * d.unitWeight()}
	return in, nil
}

// usualScatter is the coefficient of variation of tensile strength within one slab of
// one mix; common practice, no source.
const usualScatter = 0.10

// longHistories follows all pours on, side by side, once for a diagnosis.
func (d *diagnosis) longHistories(start time.Time, until float64) ([]*planPour, error) {
	all, errs := make([]*planPour, len(d.pours)), make([]error, len(d.pours))
	var group sync.WaitGroup
	for i, p := range d.pours {
		if all[i] = p.plan; all[i] == nil || !all[i].reaches(until) {
			follow := d.planPourOf(p, start, until)
			group.Go(func() { all[i], errs[i] = follow() })
		}
	}
	group.Wait()
	for i, p := range d.pours {
		if errs[i] != nil {
			return nil, errs[i]
		}
		p.plan = all[i]
	}
	return all, nil
}

func (p *planPour) reaches(until float64) bool {
	return p.hours[len(p.hours)-1]+p.offset >= until-1
}

// sawnHours notes when each joint was sawn: the middle of its cutting, or its start. A
// groove that nobody timed is taken as cut in the morning after its pour.
func (d *diagnosis) sawnHours(in *planInputs) {
	for _, j := range d.slab.Joints {
		if j.Kind != plan.Sawn {
			continue
		}
		if c := d.cutOf(j.ID); c != nil && c.Start != nil {
			at := *c.Start
			if c.End != nil {
				at = at.Add(c.End.Sub(at) / 2)
			}
			in.sawn[j.ID] = at.Sub(in.start).Hours()
			continue
		}
		in.sawn[j.ID] = in.placedAt(middleOfPath(j.Path)) + nextMorning
		d.assume("when joint "+j.ID+" was sawn", fmt.Sprintf("%.0f h after placing", nextMorning), string(source.Default), "no record of the cut", "whether it opens, and what cracks beside it")
	}
}

// nextMorning is how long after placing a joint is sawn where nobody wrote it down, h;
// common practice, no source.
const nextMorning = 20.0

func (in *planInputs) sawnAt(joint string) float64 {
	if hour, ok := in.sawn[joint]; ok {
		return hour
	}
	return math.Inf(1)
}

// placedAt is the hour at which concrete came to a place, by the truck that went there.
func (in *planInputs) placedAt(at plan.Point) float64 {
	if p := in.pourAt(at); p != nil {
		return p.run.placed(at).Sub(in.start).Hours()
	}
	return 0
}

func (in *planInputs) pourAt(at plan.Point) *planPour {
	for _, p := range in.pours {
		if ring := plan.Ring(p.run.pour.Area); len(ring) >= 3 && (ring.Contains(at) || ring.Distance(at) < nearEdge) {
			return p
		}
	}
	return nil
}

func middleOfPath(path []plan.Point) plan.Point {
	a, b := path[0], path[len(path)-1]
	return plan.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
}

// model builds the sheet in plan.
func (in *planInputs) model() restraint.Model {
	m := restraint.Model{Slab: in.slab, Base: in.base, Lines: restraint.LinesOf(in.slab, in.taken), Holds: restraint.HoldsOf(in.slab, in.taken), Settings: in.settings}
	m.Settings.Scatter = in.scatter
	for _, p := range in.pours {
		shrink := in.shrink
		pour := restraint.Pour{ID: p.run.pour.ID, Thickness: in.slab.Thickness.Value, At: func(hour float64) restraint.Concrete { return p.at(hour, shrink) }}
		if len(in.pours) > 1 {
			pour.Area = p.run.pour.Area
		}
		m.Pours = append(m.Pours, pour)
	}
	return m
}

// planModel returns the slab in plan as it was built, or with changes, for so many hours
// after the first truck, and how far its facts may lie from their values.
func (d *diagnosis) planModel(until float64, change ...planChange) (restraint.Model, restraint.Doubt, error) {
	in, err := d.planInputs(until)
	if err != nil {
		return restraint.Model{}, restraint.Doubt{}, err
	}
	for _, c := range change {
		c(in)
	}
	in.taken.Sawn = in.sawnAt
	return in.model(), d.planDoubt(), nil
}

// planDoubt is how far the facts of the model in plan may lie from their values, as half
// widths: shrinkage by the coefficient of variation of its code form, friction by its
// range.
func (d *diagnosis) planDoubt() restraint.Doubt {
	mu, low, high := d.friction()
	doubt := restraint.Doubt{Strain: strainDoubt, Strength: strengthDoubt, Stiffness: bedDoubt, Depth: grooveDoubt}
	if mu > 0 {
		doubt.Friction = math.Min(0.9, math.Max(mu-low, high-mu)/mu)
	}
	return doubt
}

// Half widths of what is not known. Shrinkage of EN 1992-1-1 is good to some 30 % as a
// coefficient of variation (its 3.1.4; from memory); heat, which is the greater part in
// the first days, to much less. The others are our own judgement.
const (
	strainDoubt   = 0.25
	strengthDoubt = 0.15
	bedDoubt      = 0.5
	grooveDoubt   = 0.1
)
