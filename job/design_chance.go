package job

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"runtime"
	"slices"

	"slabwright/causes"
	"slabwright/plan"
	"slabwright/report"
	"slabwright/restraint"
)

// designMembers is how many slabs of a joint plan are followed for its chance of
// cracking: enough to tell 1 in 10 from 5 in 10, few enough to answer within a second.
const designMembers = 10

// Chance tells how likely a slab with these joints is to crack away from them in its
// first 90 days, from members with their own strength, shrinkage and friction. The
// same slab gives the same answer.
func (g *Designer) Chance(ctx context.Context, slab plan.Slab) (*report.LayoutChance, error) {
	key, err := json.Marshal(slab)
	if err != nil {
		return nil, err
	}
	if known := g.known(string(key)); known != nil {
		return known, nil
	}
	c, err := g.followed(ctx, slab, g.base.job)
	if err == nil {
		g.remember(string(key), c)
	}
	return c, err
}

// inTime is the chance had every joint been sawn at the best of its window; nil where
// the job gives no times for the joints of the slab.
func (g *Designer) inTime(ctx context.Context, slab plan.Slab) (*report.Chance, error) {
	given := false
	for _, j := range slab.Joints {
		given = given || j.Kind == plan.Sawn && g.base.cutOf(j.ID) != nil
	}
	if !given {
		return nil, nil
	}
	free := *g.base.job
	free.Pours = slices.Clone(free.Pours)
	for i := range free.Pours {
		free.Pours[i].Saw = nil
	}
	c, err := g.followed(ctx, slab, &free)
	if err != nil {
		return nil, err
	}
	return &c.Any, nil
}

func (g *Designer) followed(ctx context.Context, slab plan.Slab, j *Job) (*report.LayoutChance, error) {
	d, err := g.on(ctx, slab)
	if err != nil {
		return nil, err
	}
	d.job = j
	model, doubt, err := d.designModel()
	if err != nil {
		return nil, err
	}
	hours := restraint.UsualHours(designHours)
	if bad := model.Check(hours); len(bad) > 0 {
		return nil, bad[0]
	}
	c, err := restraint.Samples(ctx, designMembers, model.Quick().Spread(designMembers, d.job.Basis.Seed, doubt), hours, designCell, runtime.GOMAXPROCS(0), nil)
	if err != nil {
		return nil, err
	}
	return layoutChance(c, d.panels), nil
}

// designCell is the cell in which cracks are counted, m.
const designCell = 0.5

// designModel is the slab in plan with every new joint sawn at the best of its window.
func (d *diagnosis) designModel() (restraint.Model, restraint.Doubt, error) {
	in, err := d.planInputs(designHours)
	if err != nil {
		return restraint.Model{}, restraint.Doubt{}, err
	}
	for i, p := range in.pours {
		in.pours[i] = d.facesAnew(p)
	}
	dealt, err := in.dealt(d.slab, d.panels)
	if err != nil {
		return restraint.Model{}, restraint.Doubt{}, err
	}
	for _, j := range d.slab.Joints {
		if j.Kind == plan.Sawn && d.cutOf(j.ID) == nil {
			in.sawn[j.ID] = dealt.bestCut(j.Path)
		}
	}
	in.taken.Sawn = in.sawnAt
	model := in.model()
	model.Pours = dealt.restraintPours(d.slab.Thickness.Value)
	return model, d.planDoubt(), nil
}

// facesAnew works out again what held curl uses of the strength: it goes by the panels.
func (d *diagnosis) facesAnew(p *planPour) *planPour {
	own := *p
	own.panel = d.meanPanelLength()
	own.faces(d.restraint(p.run), d.slab.Thickness.Value)
	return &own
}

// layoutChance sums up what the members did.
func layoutChance(c *restraint.Chances, panels []plan.Panel) *report.LayoutChance {
	out := &report.LayoutChance{Any: shareOf(c.Cracked, c.Members), Members: c.Members, Until: fmt.Sprintf("%.0f days after placing", designHours/hoursPerDay)}
	for _, p := range panels {
		out.Panels = append(out.Panels, report.PanelChance{Panel: p.ID, P: shareOf(crackedIn(c, p), c.Members).P})
	}
	if c.Unsound > 0 {
		out.Note = fmt.Sprintf("%d of %d members did not settle and count up to the hour they came to.", c.Unsound, c.Members)
	}
	return out
}

// crackedIn is the share of members with a crack in a panel: the most of any of its
// cells, since a crack that matters runs through several.
func crackedIn(c *restraint.Chances, p plan.Panel) float64 {
	most := 0.0
	low, high := p.Ring.Box()
	for y := low.Y + designCell/2; y < high.Y; y += designCell {
		for x := low.X + designCell/2; x < high.X; x += designCell {
			if at := (plan.Point{X: x, Y: y}); p.Ring.Contains(at) {
				chance, _ := c.Grid.At(at)
				most = math.Max(most, chance)
			}
		}
	}
	return most
}

// shareOf is the chance behind a share of so many members, with the range that holds
// it in four of five: the mean and the score interval of a share, so that none of
// ten is not taken as never. Source: Jeffreys' prior; Wilson (1927), interval.
func shareOf(share float64, members int) report.Chance {
	n, z := float64(members), 1.2816
	p := (share*n + 0.5) / (n + 1)
	mid := (share + z*z/2/n) / (1 + z*z/n)
	half := z / (1 + z*z/n) * math.Sqrt(share*(1-share)/n+z*z/4/n/n)
	return report.Chance{P: p, Low: math.Max(0, math.Min(p, mid-half)), High: math.Min(1, math.Max(p, mid+half)), About: causes.About(p)}
}
