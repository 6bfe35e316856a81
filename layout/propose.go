package layout

import (
	"context"
	"fmt"
	"math/rand/v2"

	"slabwright/plan"
	"slabwright/source"
)

// aim is one way of looking at a layout.
type aim struct {
	name, why string
	weights   Weights
	strips    bool
}

// aims are the alternatives that are always worked out.
var aims = []aim{
	{"fewest joints", "Least length of joint to cut, fill and look after. Panels are as long as the limit lets them be, and bars cross an inside corner where a joint to it would make narrow strips.",
		Weights{Length: 3, Aspect: 1, Shape: 0.3, Even: 0.1, Over: 300, Strips: 0.1, Kinks: 0.5, Corner: 0.5}, false},
	{"squarest panels", "Panels as near to square and to one another in size as the outline lets them be. They curl and shrink most evenly.",
		Weights{Length: 3, Aspect: 2, Square: 3, Shape: 1.5, Even: 1, Over: 300, Strips: 0.1, Kinks: 0.5, Corner: 0.6}, false},
	{"easiest strips", "Straight strips of equal width between forms, placed one after another, with the cuts across them in line.",
		Weights{Length: 1.5, Aspect: 1, Shape: 0.5, Even: 0.3, Over: 300, Strips: 0.5, Kinks: 3, Corner: 0.5, Widths: 12}, true},
}

// Propose returns the alternatives for a brief: fewest joints, squarest panels,
// easiest strips, and one by the brief's own weights first where it gives them. The
// same brief gives the same alternatives. Say may be nil.
//
// The error is [Problems] where the brief cannot be worked, or the context's.
func Propose(ctx context.Context, b Brief, say Say) ([]Alternative, error) {
	if bad := b.Check(); bad != nil {
		return nil, bad
	}
	if say == nil {
		say = func(int, int, string) {}
	}
	wanted := aims
	if b.Weights != (Weights{}) {
		own := aim{"your weights", "What you said counts, as you weighed it.", b.Weights, false}
		wanted = append([]aim{own}, aims...)
	}
	s := prepared(b.Slab)
	q := &search{limit: b.Spacing.Panel, random: rand.New(rand.NewPCG(b.Seed, 7)), trials: map[string]*trial{}}
	for _, f := range frames(s, b.Strip.Direction) {
		q.boards = append(q.boards, newBoard(s, f, b.Strip, b.Spacing.Panel))
	}
	var out []Alternative
	var taken []*trial
	for i, a := range wanted {
		say(i, len(wanted), a.name)
		best := q.start(ctx, a.weights, a.strips)
		if best != nil {
			best = q.improve(ctx, a.weights, best)
			best = q.anneal(ctx, a.weights, best)
			best = q.unlike(a.weights, best, taken)
		}
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if best == nil {
			return nil, fmt.Errorf("no joints could be laid out on slab %s: it has no place wider than %g m", s.ID, narrowest)
		}
		taken = append(taken, best)
		one, err := b.finish(ctx, a, best, i+1)
		if err != nil {
			return nil, err
		}
		for _, o := range out {
			if alike(o.Slab, one.Slab) {
				one.Why += " On this slab it comes out the same as " + o.Name + "."
				break
			}
		}
		out = append(out, one)
	}
	say(len(wanted), len(wanted), "done")
	return out, nil
}

// prepared returns the slab as it is laid out: without joints, with pits, drains and
// columns that lie in it as openings, and with everything that may hold it isolated
// where nobody said otherwise.
func prepared(s plan.Slab) plan.Slab {
	s.Joints, s.CornerBars = nil, nil
	s.Fixtures = append([]plan.Fixture{}, s.Fixtures...)
	for i := range s.Fixtures {
		f := &s.Fixtures[i]
		if f.Kind == plan.Duct {
			continue
		}
		if (f.Kind == plan.Pit || f.Kind == plan.Drain || f.Kind == plan.Column) && len(f.Shape) >= 3 && withinRing(s.Outline, f.Shape) {
			f.Opening = true
		}
		if f.Isolated == nil {
			f.Isolated = assumed("yes", "the layout isolates what stands in or beside the slab")
		}
	}
	return s
}

func withinRing(outline, shape []plan.Point) bool {
	for _, p := range shape {
		if !plan.Ring(outline).Contains(p) {
			return false
		}
	}
	return true
}

// madeBy is who a fact made here is known by.
const madeBy = "layout"

func assumed(word, note string) *source.Choice {
	return &source.Choice{Value: word, Known: source.Assumed, By: madeBy, Note: note}
}

func fact(value float64, note string) *source.Fact {
	return &source.Fact{Value: value, Known: source.Default, By: madeBy, Note: note}
}
