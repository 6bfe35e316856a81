package layout

import (
	"math"
	"sort"

	"slabwright/plan"
)

// narrowest is the least width of a panel, m: narrower ones break across.
//
// Source: layout guides ask for 0.5 to 0.6 m (2 ft), from memory.
const narrowest = 0.6

// board is one frame laid on a slab, with the price of a line at every place: what is
// worked out once for all the layouts tried in it.
type board struct {
	frame     frame
	strip     Strip
	limit     float64
	ground    *ground
	groups    []group
	low, high [2]float64
	places    [2][]float64 // where lines may lie, each family
	price     [2][]float64 // of a line there
}

func newBoard(s plan.Slab, f frame, strip Strip, limit float64) *board {
	f.closed = f.fan && goesRound(f, s)
	blocks := blocksOf(s, f)
	b := &board{frame: f, strip: strip, limit: limit, ground: newGround(s, blocks), groups: groupsOf(s, f, blocks)}
	b.low, b.high = f.box(s.Outline)
	if f.fan { // the hole round the centre, or a side that bulges towards it
		nearest := math.Inf(1)
		for _, side := range b.ground.sides {
			_, d := side.Nearest(f.origin)
			nearest = math.Min(nearest, d)
		}
		b.low[along] = nearest
	}
	for family := range 2 {
		step := gridStep(b.high[family] - b.low[family])
		for k := 1.0; ; k++ {
			at := b.low[family] + k*step
			if at > b.high[family]-step/2 {
				break
			}
			b.places[family] = append(b.places[family], at)
			b.price[family] = append(b.price[family], b.priceOf(family, at))
		}
	}
	return b
}

// goesRound reports whether the slab surrounds the centre of a fan.
func goesRound(f frame, s plan.Slab) bool { return plan.Ring(s.Outline).Contains(f.origin) }

// gridStep returns the step of places for lines: 5 cm, more on long slabs.
func gridStep(length float64) float64 {
	switch {
	case length > 80:
		return 0.25
	case length > 30:
		return 0.1
	}
	return 0.05
}

// priceOf returns what speaks against a line at a place: its length, sharp ends, and
// sides of the slab that run close beside it.
func (b *board) priceOf(family int, at float64) float64 {
	price := 0.0
	extent := b.high[1-family] - b.low[1-family]
	for _, r := range b.ground.runs(b.frame, line{family: family, at: at}, b.low, b.high, 0) {
		price += 0.02 * r.path.Length() / extent
		n := len(r.path)
		for _, angle := range []float64{b.ground.sharpest(r.path[1], r.path[0]), b.ground.sharpest(r.path[n-2], r.path[n-1])} {
			if angle < plan.SharpBelow {
				price += 0.3 + (plan.SharpBelow-angle)/plan.SharpBelow
			}
		}
		price += b.ground.crowding(r.path)
	}
	return price
}

// crowding returns a price for sides that run beside a line nearer than a metre:
// 20 where the strip between them is a sliver, less up to a metre.
func (g *ground) crowding(path plan.Polyline) float64 {
	const near = 1.0
	worst := 0.0
	for _, p := range path.Pieces() {
		d, _ := p.B.Minus(p.A).Unit()
		for _, s := range g.sides {
			e, ok := s.B.Minus(s.A).Unit()
			if !ok || math.Abs(d.Cross(e)) > 0.3 {
				continue
			}
			t0, t1 := s.A.Minus(p.A).Dot(d), s.B.Minus(p.A).Dot(d)
			overlap := math.Min(math.Max(t0, t1), p.Length()) - math.Max(math.Min(t0, t1), 0)
			off := math.Min(math.Abs(s.A.Minus(p.A).Cross(d)), math.Abs(s.B.Minus(p.A).Cross(d)))
			if overlap < 0.1 || off < fuzz || off > near {
				continue
			}
			if off < narrowest {
				worst = math.Max(worst, 20)
			} else {
				worst = math.Max(worst, 1.5*(near-off)/(near-narrowest)+0.2)
			}
		}
	}
	return worst
}

// spread returns the lines of one family: the pinned ones and, between them, free
// ones at the places that make the gaps most like the wanted one at the least price,
// none over the limit. Dynamic programming over the places.
func (b *board) spread(pins []line, family int, want, limit float64) []line {
	type stop struct {
		at, low, high, price float64
		pin                  int // number of the pinned line, or -1
	}
	plain := func(at, price float64) stop { return stop{at, at, at, price, -1} }
	stops := []stop{plain(b.low[family], 0)}
	round := b.frame.closed && family == across
	for i, at := range b.places[family] {
		stops = append(stops, plain(at, b.price[family][i]))
	}
	for i, p := range pins {
		stops = append(stops, stop{p.at, p.low(), p.high(), 0, i})
	}
	stops = append(stops, plain(b.high[family], 0))
	sort.SliceStable(stops, func(i, k int) bool { return stops[i].at < stops[k].at })
	n := len(stops)
	best, from := make([]float64, n), make([]int, n)
	lastPin := 0
	for k := 1; k < n; k++ {
		best[k] = math.Inf(1)
		for i := k - 1; i >= lastPin; i-- {
			least, most := stops[k].low-stops[i].high, stops[k].high-stops[i].low
			if least > 3*limit && !math.IsInf(best[k], 1) {
				break
			}
			fixed := (stops[i].pin >= 0 || i == 0) && (stops[k].pin >= 0 || k == n-1)
			if c := best[i] + gapPrice(least, most, want, limit, fixed) + stops[k].price; c < best[k] {
				best[k], from[k] = c, i
			}
		}
		if stops[k].pin >= 0 {
			lastPin = k
		}
	}
	var out []line
	for k := from[n-1]; k > 0; k = from[k] {
		if stops[k].pin >= 0 {
			out = append(out, pins[stops[k].pin])
		} else {
			out = append(out, line{family: family, at: stops[k].at})
		}
	}
	if round {
		out = append(out, line{family: family, at: b.low[family]})
	}
	for i, k := 0, len(out)-1; i < k; i, k = i+1, k-1 {
		out[i], out[k] = out[k], out[i]
	}
	return out
}

// gapPrice returns what speaks against a gap between two lines, from its least to its
// most where one of them is bent. Between two that are fixed nobody can do anything
// about a narrow one.
func gapPrice(least, most, want, limit float64, fixed bool) float64 {
	off := ((least+most)/2 - want) / want
	price := off * off
	if most > limit*limitSlack {
		price += 50 + 200*(most-limit*limitSlack)/limit
	}
	if least < narrowest+0.2 && !fixed {
		price += 100
	}
	return price
}
