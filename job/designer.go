package job

import (
	"context"
	"io/fs"
	"sync"

	"slabwright/layout"
	"slabwright/plan"
	"slabwright/report"
	"slabwright/working"
)

// Designer works on the joints of the next slab of a job. It follows the pours once
// and then tells of any joint plan which rules it keeps, what it takes and how likely
// the slab is to crack away from its joints. Its answers may be asked for at the same
// time from several places.
type Designer struct {
	base  *diagnosis // followed; only copies of it are worked on
	limit layout.Limit

	mu      sync.Mutex
	chances map[string]*report.LayoutChance // of slabs already followed, by their JSON
}

// mostChances is how many slabs are remembered: an evening of moving joints about.
const mostChances = 500

func (g *Designer) known(slab string) *report.LayoutChance {
	g.mu.Lock()
	defer g.mu.Unlock()
	return g.chances[slab]
}

func (g *Designer) remember(slab string, c *report.LayoutChance) {
	g.mu.Lock()
	defer g.mu.Unlock()
	if g.chances == nil || len(g.chances) >= mostChances {
		g.chances = map[string]*report.LayoutChance{}
	}
	g.chances[slab] = c
}

// NewDesigner follows the pours of a job for the first months. A fact that every
// joint plan needs and nobody knows is a [NotKnown] error.
func NewDesigner(ctx context.Context, j *Job, files fs.FS, say Progress) (*Designer, error) {
	d, err := begin(ctx, j, files, say)
	if err != nil {
		return nil, err
	}
	if d.slab.Thickness == nil {
		return nil, NotKnown{"a joint plan needs the thickness of the slab: give it in slabs[0].thickness_m"}
	}
	if len(j.Pours) == 0 {
		return nil, NotKnown{"a joint plan needs a pour with its clock, mix and weather: give one in pours"}
	}
	d.head()
	d.drawing()
	d.basis()
	if err := d.followPours(); err != nil {
		return nil, err
	}
	d.holds()
	if _, err := d.planInputs(designHours); err != nil {
		return nil, err
	}
	facts, err := d.spacingFacts()
	if err != nil {
		return nil, err
	}
	return &Designer{base: d, limit: layout.SpacingLimit(facts)}, nil
}

// designHours is how long a joint plan is followed, h: the first season of drying and
// its cold nights, in which a slab that will crack usually has.
const designHours = 90 * hoursPerDay

// on returns the diagnosis with another slab in its place. What it notes down goes to
// a content of its own, so that answers given at the same time do not meet.
func (g *Designer) on(ctx context.Context, slab plan.Slab) (*diagnosis, error) {
	panels, err := slab.Panels()
	if err != nil {
		return nil, err
	}
	g.mu.Lock()
	defer g.mu.Unlock()
	d := *g.base
	d.ctx, d.slab, d.panels = ctx, slab, panels
	d.content, d.book = &report.Content{Head: g.base.content.Head}, working.Book{}
	d.pours = nil
	for _, p := range g.base.pours {
		own := *p
		own.d = &d
		d.pours = append(d.pours, &own)
	}
	return &d, nil
}
