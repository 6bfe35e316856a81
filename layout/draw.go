package layout

import (
	"math"
	"sort"

	"slabwright/plan"
)

// setting is one choice of everything a layout follows from on a board.
type setting struct {
	option [64]uint8        // of each group, up to 64
	want   [2]float64       // gaps wanted, each family
	limit  [2]float64       // gaps allowed
	strips bool             // a form at every strip, not only where the pour has to end
	free   *[2][]float64    // where the lines that nothing fixes lie; nil: where spread puts them
	skip   map[stretch]bool // stretches of lines that are left out
}

// stretch is one of the pieces into which the slab's outline and openings part a line.
type stretch struct {
	family, at int // at in millimetres
	number     int
}

func stretchOf(l line, number int) stretch {
	return stretch{l.family, int(math.Round(l.at * 1000)), number}
}

// sketch is a layout as stretches of joint, before it becomes a plan.
type sketch struct {
	board *board
	lines [2][]line
	runs  []run
	pours int
}

// draw returns the layout of a setting.
func (b *board) draw(s setting) sketch {
	var pins []pin
	for i, g := range b.groups {
		option := 0
		if i < len(s.option) {
			option = int(s.option[i])
		}
		pins = append(pins, g.options[min(option, len(g.options)-1)]...)
	}
	k := sketch{board: b}
	for family := range 2 {
		fixed := pinned(b.usable(pins), family, s.limit[family]/4)
		if s.free != nil {
			k.lines[family] = withFree(fixed, family, s.free[family])
		} else {
			k.lines[family] = b.spread(fixed, family, s.want[family], s.limit[family])
		}
	}
	for family := range 2 {
		for i, l := range k.lines[family] {
			for n, r := range b.ground.runs(b.frame, l, b.low, b.high, i) {
				if r.path.Length() >= shortest && !s.skip[stretchOf(l, n)] {
					k.runs = append(k.runs, r)
				}
			}
		}
	}
	k.form(s.strips)
	k.square()
	return k
}

// easyStrip is the width of strip that a hand screed or a light machine spans, m.
//
// Source: common practice, no source.
const easyStrip = 6.0

// form makes formed joints of the lines where one pour ends and the next begins:
// those along the strips, and across them where a strip is more than a day's pour.
func (k *sketch) form(strips bool) {
	b := k.board
	lengthwise := b.lengthwise()
	widest := b.strip.Widest
	if strips && (widest == 0 || widest > easyStrip) {
		widest = math.Max(easyStrip, b.limit)
	}
	parts, width := k.formEvery(lengthwise, widest)
	k.pours = parts
	if b.strip.Area > 0 {
		if parts == 1 {
			width = b.high[lengthwise] - b.low[lengthwise]
		}
		ends, _ := k.formEvery(1-lengthwise, b.strip.Area/math.Max(width, 0.1))
		k.pours *= ends
	}
}

// scatter returns how unequal the strips along the slab are in width, standard
// deviation over mean.
func (k *sketch) scatter() float64 {
	f := k.board.lengthwise()
	last, n, sum, squares := k.board.low[f], 0.0, 0.0, 0.0
	add := func(at float64) {
		sum, squares, n, last = sum+at-last, squares+(at-last)*(at-last), n+1, at
	}
	for _, l := range k.lines[f] {
		add(l.at)
	}
	add(k.board.high[f])
	mean := sum / n
	return math.Sqrt(math.Max(0, squares/n-mean*mean)) / mean
}

// jogs counts the lines that go on out of line beyond an opening.
func (k *sketch) jogs() (n int) {
	for family := range 2 {
		for _, l := range k.lines[family] {
			for i := 1; i < len(l.ways); i++ {
				if l.ways[i].jog != "" && l.ways[i].jog == l.ways[i-1].jog && math.Abs(l.ways[i].at-l.ways[i-1].at) > fuzz {
					n++
				}
			}
		}
	}
	return n
}

// lengthwise returns the family of lines that run along the strips.
func (b *board) lengthwise() int {
	if b.strip.Direction != nil || b.high[across]-b.low[across] >= b.high[along]-b.low[along] {
		return along
	}
	return across
}

// formEvery makes formed joints of the lines of a family so that they lie no further
// apart than most, 0 for none, and returns into how many parts they divide the slab
// and how wide the widest is.
func (k *sketch) formEvery(family int, most float64) (parts int, widest float64) {
	b := k.board
	last := b.low[family]
	parts = 1
	if most <= 0 {
		return 1, b.high[family] - b.low[family]
	}
	lines := k.lines[family]
	for i, l := range lines {
		next := b.high[family]
		if i+1 < len(lines) {
			next = lines[i+1].at
		}
		if next-last <= most+1e-6 {
			continue
		}
		widest = math.Max(widest, l.at-last)
		last = l.at
		parts++
		for n, r := range k.runs {
			if r.family == family && r.line == i {
				k.runs[n].kind = plan.Formed
			}
		}
	}
	return parts, math.Max(widest, b.high[family]-last)
}

// withFree returns the fixed lines with free ones among them, those left out that come
// too near to a fixed one.
func withFree(fixed []line, family int, free []float64) []line {
	out := append([]line{}, fixed...)
	for _, at := range free {
		l := line{family: family, at: at}
		clear := true
		for _, f := range fixed {
			clear = clear && (f.low()-at > narrowest || at-f.high() > narrowest)
		}
		if clear {
			out = append(out, l)
		}
	}
	sort.SliceStable(out, func(i, k int) bool { return out[i].at < out[k].at })
	return out
}

// shortest is the least length of joint that is drawn, m.
const shortest = 0.3

// usable leaves out pins whose line would run beside the slab's edge as a sliver.
func (b *board) usable(pins []pin) []pin {
	var out []pin
	for _, p := range pins {
		if p.at > b.low[p.family]+narrowest && p.at < b.high[p.family]-narrowest || p.rank >= 3 {
			out = append(out, p)
		}
	}
	return out
}

// slab returns the sketch as a plan: block-outs first, then the lines across, then
// those along.
func (k sketch) slab() plan.Slab {
	s := k.board.ground.slab
	s.Joints = nil
	number := 0
	add := func(kind plan.JointKind, path plan.Polyline) {
		number++
		s.Joints = append(s.Joints, plan.Joint{ID: jointID(number), Kind: kind, Path: path})
	}
	for _, r := range k.runs {
		add(r.kind, r.path)
	}
	for _, b := range k.board.ground.blocks {
		for _, p := range outlineClip(s, b.ring) {
			add(plan.Isolation, p)
		}
	}
	return s
}

// outlineClip returns a block-out's path within the outline: the whole ring, or the
// stretches of it inside.
func outlineClip(s plan.Slab, ring plan.Ring) []plan.Polyline {
	outer := &ground{ring: plan.Ring(s.Outline).Anticlockwise(), sides: plan.Ring(s.Outline).Sides()}
	pieces := outer.clip(closed(ring))
	if len(pieces) == 2 && pieces[0][0] == pieces[1][len(pieces[1])-1] && pieces[0][0] == ring[0] {
		return []plan.Polyline{append(append(plan.Polyline{}, pieces[1]...), pieces[0][1:]...)}
	}
	return pieces
}
