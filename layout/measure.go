package layout

import (
	"math"

	"slabwright/plan"
)

// Measure is a layout in plain numbers.
type Measure struct {
	Panels  int     `json:"panels"` // block-outs left out
	Joint   float64 `json:"joint_m"`
	PerArea float64 `json:"joint_per_area"` // m per m²
	Longest float64 `json:"longest_m"`      // panel side
	Worst   float64 `json:"worst_aspect"`
	Aspect  float64 `json:"mean_aspect"`
	Long    int     `json:"over_aspect"`   // panels longer than 1.5 times their width
	Excess  float64 `json:"aspect_excess"` // over 1.3, three times over 1.5 and a bit for passing it, a full panel
	Small   int     `json:"small"`         // panels of less than an eighth of a full one
	Unfull  float64 `json:"unfilled"`      // mean share of the least rectangle
	Uneven  float64 `json:"uneven"`        // of the rectangles round panels: standard deviation of area over mean
	Over    float64 `json:"over_limit"`    // mean excess of panel length over the limit and a fifth of the greatest
	Bends   float64 `json:"bends"`         // and lines that go on out of line beyond an opening, a full panel
	Widths  float64 `json:"strip_widths"`  // of strips between forms: standard deviation over mean
	Pours   int     `json:"pours"`
	Parted  float64 `json:"parted_m"` // lines made isolation joints because another stops there
	// places where a hard rule is not met: slivers, sharp corners, inside corners without
	// a joint, joints that stop at the side of a panel, loose ends
	Slivers int `json:"slivers"`
	Sharp   int `json:"sharp"`
	Unmet   int `json:"unmet"` // inside corners that bars cross
	Bare    int `json:"bare"`  // of them, those that a joint could meet without narrow strips
	Tees    int `json:"tees"`
	Loose   int `json:"loose"`

	full, limit float64 // as many full panels as the area makes, and their side, m
}

// Hard returns in how many places a hard rule is not met; an inside corner without a
// joint gets bars instead and is not among them.
func (m Measure) Hard() int { return m.Slivers + m.Sharp + m.Tees + m.Loose }

// measure sums up an examination.
func (e *examined) measure(limit float64) Measure {
	m := Measure{}
	area, excess, sum, squares := 0.0, 0.0, 0.0, 0.0
	for i, p := range e.panels {
		area += p.Area
		if e.block[i] {
			continue
		}
		m.Panels++
		gross := p.Length * p.Width // a block-out in its corner makes a panel no smaller
		sum += gross
		squares += gross * gross
		m.Longest = math.Max(m.Longest, p.Length)
		m.Worst = math.Max(m.Worst, p.Aspect)
		m.Aspect += p.Aspect
		excess += math.Max(0, p.Aspect-1.3)
		if p.Aspect > AspectWanted+1e-6 {
			m.Long++
			excess += 0.3 + 2*(p.Aspect-AspectWanted)
		}
		if p.Area < smallPanel*limit*limit {
			m.Small++
		}
		m.Unfull += 1 - p.Ring.Area()/(p.Length*p.Width)
		m.Over += math.Max(0, p.Length/limit-limitSlack)
	}
	n := math.Max(1, float64(m.Panels))
	mean := sum / n
	worst := math.Max(0, m.Longest/limit-limitSlack)
	m.full = math.Max(1, area/(limit*limit))
	m.limit = limit
	m.Aspect, m.Excess, m.Unfull, m.Over = m.Aspect/n, excess/m.full, m.Unfull/n, m.Over/n+worst/5
	m.Uneven = math.Sqrt(math.Max(0, squares/n-mean*mean)) / mean
	bends := 0
	for _, j := range e.slab.Joints {
		m.Joint += plan.Polyline(j.Path).Length()
		if j.Kind != plan.Isolation {
			bends += turns(j.Path)
		}
	}
	m.PerArea = m.Joint / area
	m.Bends = float64(bends) / m.full
	for _, b := range e.breaches {
		switch b.rule {
		case "sliver":
			m.Slivers++
		case "sharp":
			m.Sharp++
		case "corner", "bars":
			m.Unmet++
			if _, narrow := e.stripAt(b, limit); !narrow {
				m.Bare++
			}
		case "tee":
			m.Tees++
		case "loose":
			m.Loose++
		}
	}
	return m
}

// turns counts the bends of a line that one sees: arcs are drawn with turns of up to
// 10 degrees, which are none.
func turns(path plan.Polyline) (n int) {
	pieces := path.Pieces()
	for i := 1; i < len(pieces); i++ {
		a, b := pieces[i-1], pieces[i]
		if math.Abs(math.Atan2(a.B.Minus(a.A).Cross(b.B.Minus(b.A)), a.B.Minus(a.A).Dot(b.B.Minus(b.A)))) > 12*math.Pi/180 {
			n++
		}
	}
	return n
}

// smallPanel is the share of a full square panel under which a panel counts as small:
// it moves with its neighbour and is one more thing to cut.
const smallPanel = 0.125

// Prices of places where a hard rule is not met, against which every weighed one is
// small: a layout that meets them all is preferred to any that does not.
const (
	hardPrice = 100.0
	barePrice = 8.0 // an inside corner with bars that a joint could well meet

	smallPrice  = 0.5 // a small panel, over the full ones
	partedPrice = 0.2 // a metre of joint that holds nothing level, over the full panels
)

// score is what speaks against a layout: the hard rules first, then what is weighed.
// What is counted is taken over as many full panels as the area makes, so that small
// slabs and large yards are weighed alike; joints at the limit both ways score 1 for
// their length.
func (w Weights) score(m Measure) float64 {
	corner := w.Corner
	if corner == 0 {
		corner = unmetPrice
	}
	counted := corner*float64(m.Unmet) + w.Strips*float64(m.Pours) + partedPrice*m.Parted + smallPrice*float64(m.Small)
	return hardPrice*float64(m.Hard()) + barePrice*float64(m.Bare) + counted/m.full +
		w.Length*m.PerArea*m.limit/2 + w.Square*(m.Aspect-1) + w.Aspect*m.Excess + w.Shape*m.Unfull + w.Even*m.Uneven + w.Over*m.Over + w.Kinks*m.Bends + w.Widths*m.Widths
}

// unmetPrice is what an inside corner that bars cross counts where nobody says.
const unmetPrice = 1.0
