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
	Excess  float64 `json:"aspect_excess"` // mean over 1.3, three times over 1.5, panel by panel
	Small   int     `json:"small"`         // panels of less than an eighth of a full one
	Unfull  float64 `json:"unfilled"`      // mean share of the least rectangle
	Uneven  float64 `json:"uneven"`        // of the rectangles round panels: standard deviation of area over mean
	Over    float64 `json:"over_limit"`    // mean excess of panel length over the limit and a fifth of the greatest
	Bends   float64 `json:"bends"`         // a joint
	Pours   int     `json:"pours"`
	Parted  float64 `json:"parted_m"` // lines made isolation joints because another stops there
	// places where a hard rule is not met: slivers, sharp corners, inside corners without
	// a joint, joints that stop at the side of a panel, loose ends
	Slivers int `json:"slivers"`
	Sharp   int `json:"sharp"`
	Unmet   int `json:"unmet"`
	Tees    int `json:"tees"`
	Loose   int `json:"loose"`
}

// Hard returns in how many places a hard rule is not met; an inside corner without a
// joint gets bars instead and is not among them.
func (m Measure) Hard() int { return m.Slivers + m.Sharp + m.Tees + m.Loose }

// measure sums up an examination.
func (e *examined) measure(limit float64) Measure {
	m := Measure{}
	area, sum, squares := 0.0, 0.0, 0.0
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
		m.Excess += math.Max(0, p.Aspect-1.3) + 2*math.Max(0, p.Aspect-AspectWanted)
		if p.Area < smallPanel*limit*limit {
			m.Small++
		}
		m.Unfull += 1 - p.Ring.Area()/(p.Length*p.Width)
		m.Over += math.Max(0, p.Length/limit-1.001)
	}
	n := math.Max(1, float64(m.Panels))
	mean := sum / n
	worst := math.Max(0, m.Longest/limit-1.001)
	m.Aspect, m.Excess, m.Unfull, m.Over = m.Aspect/n, m.Excess/n, m.Unfull/n, m.Over/n+worst/5
	m.Uneven = math.Sqrt(math.Max(0, squares/n-mean*mean)) / mean
	bends := 0
	for _, j := range e.slab.Joints {
		m.Joint += plan.Polyline(j.Path).Length()
		if j.Kind != plan.Isolation {
			bends += turns(j.Path)
		}
	}
	m.PerArea = m.Joint / area
	m.Bends = float64(bends) / math.Max(1, float64(len(e.slab.Joints)))
	for _, b := range e.breaches {
		switch b.rule {
		case "sliver":
			m.Slivers++
		case "sharp":
			m.Sharp++
		case "corner", "bars":
			m.Unmet++
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
	hardPrice  = 100.0
	unmetPrice = 12.0 // an inside corner that gets bars instead of a joint, as good as hard

	smallPrice  = 0.5 // a small panel
	partedPrice = 0.2 // a metre of joint that holds nothing level
)

// score is what speaks against a layout: the hard rules first, then what is weighed.
// perStrip is the number of pours over the least possible.
func (w Weights) score(m Measure) float64 {
	corner := w.Corner
	if corner == 0 {
		corner = unmetPrice
	}
	return hardPrice*float64(m.Hard()) + corner*float64(m.Unmet) +
		w.Length*m.PerArea + w.Square*(m.Aspect-1) + w.Aspect*m.Excess + w.Shape*m.Unfull + w.Even*m.Uneven + w.Over*m.Over + w.Strips*float64(m.Pours) + w.Kinks*m.Bends + partedPrice*m.Parted + smallPrice*float64(m.Small)
}
