package job

import (
	"fmt"
	"math"
	"time"

	"slabwright/concrete"
	"slabwright/plan"
	"slabwright/source"
)

// hypothesesOf lists the causes that this slab can be replayed without: only those for
// which there is something on it to take away.
func (d *diagnosis) hypothesesOf(in *planInputs) []hypothesis {
	var all []hypothesis
	for _, of := range []func(*planInputs) *hypothesis{d.withoutLateCut, d.withoutShallowCut, d.withoutLockedDowels, d.withoutHolds, d.withoutCorners, d.withoutLongPanels, d.withLessWater} {
		if h := of(in); h != nil {
			all = append(all, *h)
		}
	}
	return all
}

// bestCut is how long after placing the joints of this slab are best cut, hours: the
// best time of the cut window, the earliest of the pours; ten hours without a window.
func (d *diagnosis) bestCut() float64 {
	best := math.Inf(1)
	for _, p := range d.pours {
		if p.wet != nil && !p.wet.Best.IsZero() {
			best = math.Min(best, p.wet.Best.Sub(p.centre).Hours())
		}
	}
	if math.IsInf(best, 1) {
		return usualCut
	}
	return best
}

// usualCut is a usual time to saw in hours after placing; the middle of the 4-12 h of
// ACI 302.1R, from memory.
const usualCut = 10.0

// cutSlack is how much later than the best time a cut must be to be looked at, hours.
const cutSlack = 1.0

func (d *diagnosis) withoutLateCut(in *planInputs) *hypothesis {
	best, last := d.bestCut(), time.Time{}
	late := false
	for _, j := range in.slab.Joints {
		if j.Kind != plan.Sawn {
			continue
		}
		placed := in.placedAt(middleOfPath(j.Path))
		late = late || in.sawnAt(j.ID) > placed+best+cutSlack
		if at := in.start.Add(time.Duration((placed + best) * float64(time.Hour))); at.After(last) {
			last = at
		}
	}
	if !late {
		return nil
	}
	words := fmt.Sprintf("each joint cut within %.0f h of placing, the last by %s", best, d.clock(last.Round(30*time.Minute)))
	return &hypothesis{cause: "late-cut", words: words, change: []planChange{cutInTime(best)}}
}

// deepGroove is the groove that surely works, as a share of the thickness: the third
// asked for in thick slabs and on stiff bases; ACI 302.1R, from memory.
const deepGroove = 1.0 / 3

// shallowBelow is the share of the thickness below which a groove is looked at.
const shallowBelow = 0.29

func (d *diagnosis) withoutShallowCut(in *planInputs) *hypothesis {
	thick := in.slab.Thickness.Value
	shallow := false
	for _, j := range in.slab.Joints {
		shallow = shallow || j.Kind == plan.Sawn && j.Groove.Or(in.taken.Groove*thick) < shallowBelow*thick
	}
	if !shallow {
		return nil
	}
	deep := func(in *planInputs) {
		in.slab.Joints = append([]plan.Joint(nil), in.slab.Joints...)
		for i := range in.slab.Joints {
			j := &in.slab.Joints[i]
			if j.Kind == plan.Sawn && j.Groove.Or(in.taken.Groove*thick) < deepGroove*thick {
				j.Groove = &source.Fact{Value: deepGroove * thick, Known: source.Assumed}
			}
		}
	}
	return &hypothesis{cause: "shallow-cut", words: fmt.Sprintf("grooves a third of the thickness deep, %.0f mm", 1000*deepGroove*thick), change: []planChange{deep}}
}

// clearOfCrossing is how far from a crossing the first dowel stands where nothing is to
// lock, m; practice for bars of two directions, from memory.
const clearOfCrossing = 0.5

func (d *diagnosis) withoutLockedDowels(in *planInputs) *hypothesis {
	locks := false
	for _, j := range in.slab.Joints {
		tied := j.Transfer.Is("tied") || j.Dowels != nil && j.Dowels.FreeAlong.Is("no")
		locks = locks || tied || (j.Transfer.Is("dowelled") || j.Dowels != nil) && (j.Dowels == nil || !j.Dowels.FreeSide.Is("yes"))
	}
	if !locks {
		return nil
	}
	straight := dowelsAs(func(b *plan.Dowels) {
		b.Skew = nil
		b.FreeAlong = &source.Choice{Value: "yes", Known: source.Assumed}
	})
	return &hypothesis{cause: "locked-dowels", words: fmt.Sprintf("dowels straight, free to slide and free sideways, none within %.1f m of a crossing", clearOfCrossing),
		change: []planChange{ownDowels, straight, dowelsFree(), dowelsClear(clearOfCrossing)}}
}

// ownDowels gives joints that are only known to be dowelled bars that can be changed.
func ownDowels(in *planInputs) {
	in.slab.Joints = append([]plan.Joint(nil), in.slab.Joints...)
	for i := range in.slab.Joints {
		if j := &in.slab.Joints[i]; j.Transfer.Is("dowelled") && j.Dowels == nil {
			j.Dowels = &plan.Dowels{}
		}
	}
}

func (d *diagnosis) withoutHolds(in *planInputs) *hypothesis {
	h := hypothesis{cause: "held-by-fixture"}
	var names []string
	for _, f := range in.slab.Fixtures {
		if f.Kind == plan.Duct || f.Isolated.Is("yes") {
			continue
		}
		names = append(names, d.fixtureName(f.ID))
		h.change = append(h.change, isolated(f.ID))
	}
	if len(names) == 0 {
		return nil
	}
	h.words = "a soft strip over the full depth round the " + list(names)
	return &h
}

func (d *diagnosis) withoutCorners(in *planInputs) *hypothesis {
	h := hypothesis{cause: "inside-corner"}
	best := d.bestCut()
	for i, c := range in.slab.InsideCorners() {
		if c.Round || c.Joint != "" && c.Ends {
			continue
		}
		to, ok := cornerRelief(in.slab, c)
		if !ok {
			continue
		}
		j := plan.Joint{ID: fmt.Sprintf("relief %d", i+1), Kind: plan.Sawn, Path: []plan.Point{c.At, to},
			Groove: &source.Fact{Value: reliefGroove * in.slab.Thickness.Value, Known: source.Assumed}}
		h.change = append(h.change, jointAdded(j, in.placedAt(c.At)+best))
	}
	if len(h.change) == 0 {
		return nil
	}
	h.words = fmt.Sprintf("a joint from each of %s, cut within %.0f h", plural(len(h.change), "inside corner"), best)
	return &h
}

// reliefGroove is the depth of a joint from a corner as a share of the thickness: it has
// to open before the corner tears, and the tension there is crowded.
const reliefGroove = 0.5

// shortRelief is the shortest joint from a corner that is of use, m.
const shortRelief = 0.4

// cornerRelief is where a joint from a corner ends that goes on in the line of one of
// its sides: the nearer joint or edge of the two ways.
func cornerRelief(s plan.Slab, c plan.Corner) (plan.Point, bool) {
	best, found, to := math.Inf(1), false, plan.Point{}
	for _, side := range c.Sides {
		at, away := firstMet(s, c.At, side.Times(-1))
		if away > shortRelief && away < best {
			best, found, to = away, true, at
		}
	}
	return to, found
}

// firstMet is the first joint, edge or fixture that a ray from a point meets.
func firstMet(s plan.Slab, from, way plan.Point) (at plan.Point, away float64) {
	away = math.Inf(1)
	see := func(path []plan.Point) {
		for _, piece := range plan.Polyline(path).Pieces() {
			along := piece.B.Minus(piece.A)
			cross := way.Cross(along)
			if math.Abs(cross) < 1e-9 {
				continue
			}
			gap := piece.A.Minus(from)
			t, u := gap.Cross(along)/cross, gap.Cross(way)/cross
			if t > 0.05 && u >= -1e-9 && u <= 1+1e-9 && t < away {
				away, at = t, from.Plus(way.Times(t))
			}
		}
	}
	see(append(append([]plan.Point(nil), s.Outline...), s.Outline[0]))
	for _, j := range s.Joints {
		see(j.Path)
	}
	for _, f := range s.Fixtures {
		if f.Opening && len(f.Shape) > 2 {
			see(append(append([]plan.Point(nil), f.Shape...), f.Shape[0]))
		}
	}
	return at, away
}

// When a panel is long: ACI 302.1R (24-36 thicknesses, proportions up to 1.5), from
// memory.
const (
	longOverThick = 36.0
	longOverWide  = 1.5
)

func (d *diagnosis) withoutLongPanels(in *planInputs) *hypothesis {
	h := hypothesis{cause: "long-panel"}
	thick, best, longest := in.slab.Thickness.Value, d.bestCut(), 0.0
	for _, p := range d.panels {
		if p.Length <= longOverThick*thick && p.Length <= longOverWide*p.Width {
			continue
		}
		path := halving(p)
		if len(path) < 2 {
			continue
		}
		longest = math.Max(longest, p.Length)
		j := plan.Joint{ID: "half " + p.ID, Kind: plan.Sawn, Path: path, Groove: &source.Fact{Value: deepGroove * thick, Known: source.Assumed}}
		h.change = append(h.change, jointAdded(j, in.placedAt(middleOfPath(path))+best))
	}
	if len(h.change) == 0 {
		return nil
	}
	h.words = fmt.Sprintf("one more joint across each of %s, so that none is longer than %.1f m", plural(len(h.change), "long panel"), longest/2)
	return &h
}

// lessWater is how much less water is looked at, kg/m³; about what a water-reducing
// admixture saves, common practice.
const lessWater = 20.0

// withLessWater is the same slab of a mix with less water. It says nothing of the cause
// at one place, since the whole slab shares it.
func (d *diagnosis) withLessWater(*planInputs) *hypothesis {
	run := d.firstRun()
	if run == nil || !(run.mix.Water > lessWater) {
		return nil
	}
	mean := run.mix.EN1992().Mean28
	limit := func(water float64) float64 {
		return concrete.LimitStrainB3(concrete.MixB3{Mean28: mean, Water: water, Type: "I", Curing: 1})
	}
	share := limit(run.mix.Water-lessWater) / limit(run.mix.Water)
	d.assume("what less water saves of the shrinkage", fmt.Sprintf("%.0f %% for %.0f kg/m³", 100*(1-share), lessWater), string(source.Default), "limit strain of model B3, at equal strength", "the chance shown for less water")
	return &hypothesis{cause: "drying-mid-panel", also: true, words: fmt.Sprintf("%.0f L/m³ less water in the mix", lessWater), change: []planChange{lessShrinkage(share)}}
}

// halving is the line across a panel at half its length, from side to side.
func halving(p plan.Panel) []plan.Point {
	middle, way := p.Ring.Centroid(), longWay(p)
	across := plan.Point{X: -way.Y, Y: way.X}
	var ends []plan.Point
	for _, dir := range []plan.Point{across, across.Times(-1)} {
		at, away := firstMet(plan.Slab{Outline: p.Ring}, middle, dir)
		if math.IsInf(away, 1) {
			return nil
		}
		ends = append(ends, at)
	}
	return ends
}

// longWay is the direction of a panel's longest side.
func longWay(p plan.Panel) plan.Point {
	var way plan.Point
	most := 0.0
	for i, a := range p.Ring {
		to := p.Ring[(i+1)%len(p.Ring)]
		if u, ok := to.Minus(a).Unit(); ok && a.To(to) > most {
			most, way = a.To(to), u
		}
	}
	return way
}
