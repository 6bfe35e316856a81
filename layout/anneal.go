package layout

import (
	"context"
	"math"
	"slices"
)

// anneal moves single lines of the best layout, adds and leaves out lines and
// stretches of lines, at random; steps that make it worse are taken less and less
// often. It frees the lines of one arm of a slab from those of another, and weighs
// exactly what spreading the lines weighs roughly.
func (q *search) anneal(ctx context.Context, w Weights, best *trial) *trial {
	now := best
	steps := min(max(3000/(best.measure.Panels+5), 8), 150)
	const hot, cold = 0.25, 0.005 // of score: a bend more or less, and hardly anything
	for i := range steps {
		if ctx.Err() != nil {
			return best
		}
		next := q.try(now.board, q.step(now))
		if next == nil || next == now {
			continue
		}
		heat := hot * math.Pow(cold/hot, float64(i)/float64(steps))
		worse := w.score(next.measure) - w.score(now.measure)
		if worse <= 0 || q.random.Float64() < math.Exp(-worse/heat) {
			now = next
		}
		best = better(w, best, now)
	}
	return best
}

// step returns the setting of a layout with one random change.
func (q *search) step(t *trial) setting {
	s := t.setting
	free := [2][]float64{}
	for family := range 2 {
		for _, l := range t.lines[family] {
			if len(l.ways) == 0 {
				free[family] = append(free[family], l.at)
			}
		}
	}
	s.free = &free
	family := q.random.IntN(2)
	low, high := t.board.low[family], t.board.high[family]
	grid := gridStep(high - low)
	lines := free[family]
	switch q.random.IntN(6) {
	case 0: // another option of a group of corners
		if n := min(len(t.board.groups), len(s.option)); n > 0 {
			g := q.random.IntN(n)
			s.option[g] = uint8(q.random.IntN(len(t.board.groups[g].options)))
		}
	case 1: // a line more
		at := low + math.Round(q.random.Float64()*(high-low)/grid)*grid
		free[family] = append(slices.Clone(lines), at)
	case 2: // a line less
		if len(lines) > 0 {
			k := q.random.IntN(len(lines))
			free[family] = slices.Delete(slices.Clone(lines), k, k+1)
		}
	case 3: // a stretch left out, or put back
		if len(t.lines[family]) > 0 {
			l := t.lines[family][q.random.IntN(len(t.lines[family]))]
			s.skip = toggled(s.skip, stretchOf(l, q.random.IntN(3)))
		}
	default: // a line moved
		if len(lines) > 0 {
			k := q.random.IntN(len(lines))
			free[family] = slices.Clone(lines)
			free[family][k] += math.Round(q.random.NormFloat64()*8) * grid
		}
	}
	slices.Sort(free[family])
	return s
}

func toggled(skip map[stretch]bool, one stretch) map[stretch]bool {
	out := map[stretch]bool{}
	for k := range skip {
		out[k] = true
	}
	if out[one] {
		delete(out, one)
	} else {
		out[one] = true
	}
	return out
}
