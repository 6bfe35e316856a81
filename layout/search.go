package layout

import (
	"context"
	"math"
	"math/rand/v2"

	"slabwright/plan"
)

// trial is one layout that was drawn and examined.
type trial struct {
	key     string // of its joints
	board   *board
	setting setting
	slab    plan.Slab
	measure Measure
	lines   [2][]line // as drawn
	runs    []run
}

// search tries settings on the boards of a slab and keeps what it has drawn, so that
// every alternative picks from all that was tried.
type search struct {
	boards []*board
	limit  float64
	random *rand.Rand
	trials map[string]*trial
}

// try draws and examines a setting, once.
func (q *search) try(b *board, s setting) *trial {
	k := b.draw(s)
	slab := k.slab()
	key := signature(slab)
	if t, ok := q.trials[key]; ok {
		return t
	}
	t := &trial{key: key, board: b, setting: s, slab: slab, lines: k.lines, runs: k.runs}
	e, err := examine(slab, q.limit)
	if err != nil {
		return nil
	}
	t.measure = e.measure(q.limit)
	t.measure.Pours = k.pours
	t.measure.Widths = k.scatter()
	t.measure.Bends += float64(k.jogs()) / t.measure.full
	for _, r := range k.runs {
		if r.kind == plan.Isolation {
			t.measure.Parted += r.path.Length()
		}
	}
	q.trials[key] = t
	return t
}

// better returns the one of lower score; the first where they are equal or the other
// could not be drawn.
func better(w Weights, a, b *trial) *trial {
	if a == nil || b != nil && w.score(b.measure) < w.score(a.measure)-1e-9 {
		return b
	}
	return a
}

// wants are the shares of the limit tried as wanted gaps.
var wants = []float64{1, 0.9, 0.8, 0.7}

// start tries the usual settings of every board: wanted gaps both ways.
func (q *search) start(ctx context.Context, w Weights, strips bool) *trial {
	var best *trial
	for _, b := range q.boards {
		for _, x := range wants {
			for _, y := range wants {
				if ctx.Err() != nil {
					return best
				}
				s := b.usual(x, y, strips)
				best = better(w, best, q.try(b, s))
				for i := range s.option { // no line fixed: bars at every corner
					s.option[i] = math.MaxUint8
				}
				best = better(w, best, q.try(b, s))
			}
		}
	}
	return best
}

// improve changes the options of the corners and the wanted gaps by turns for as long
// as that helps.
func (q *search) improve(ctx context.Context, w Weights, best *trial) *trial {
	for {
		before := best
		best = q.gaps(ctx, w, q.descend(ctx, w, best))
		if best == before || ctx.Err() != nil {
			return best
		}
	}
}

// gaps tries other wanted gaps with the options of the best.
func (q *search) gaps(ctx context.Context, w Weights, best *trial) *trial {
	from := best
	for _, x := range wants {
		for _, y := range wants {
			if ctx.Err() != nil {
				return best
			}
			s := from.setting
			s.want = [2]float64{x * s.limit[0], y * s.limit[1]}
			best = better(w, best, q.try(from.board, s))
		}
	}
	return best
}

// descend changes the options of one group of corners after another for as long as
// that helps.
func (q *search) descend(ctx context.Context, w Weights, best *trial) *trial {
	for changed := true; changed; {
		changed = false
		for _, i := range q.random.Perm(min(len(best.board.groups), len(best.setting.option))) {
			for option := range best.board.groups[i].options {
				if ctx.Err() != nil {
					return best
				}
				s := best.setting
				s.option[i] = uint8(option)
				if t := better(w, best, q.try(best.board, s)); t != best {
					best, changed = t, true
				}
			}
		}
	}
	return best
}

// usual returns the setting with gaps of a share of the limit each way; strips no
// wider than they may be.
func (b *board) usual(x, y float64, strips bool) setting {
	s := setting{limit: [2]float64{b.limit, b.limit}, strips: strips}
	if w := b.strip.Widest; w > 0 {
		s.limit[b.lengthwise()] = math.Min(b.limit, w)
	}
	s.want = [2]float64{x * s.limit[0], y * s.limit[1]}
	return s
}
