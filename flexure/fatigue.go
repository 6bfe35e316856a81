package flexure

import "math"

// FatigueLife returns how many repetitions of a stress the concrete bears.
type FatigueLife func(ratio float64) float64

// FatiguePCA returns the repetitions to failure at a stress ratio (edge stress over
// flexural strength): without limit (infinity) up to 0.45.
//
// Source: Portland Cement Association thickness design (EB109, 1984), from memory.
func FatiguePCA(ratio float64) float64 {
	switch {
	case ratio <= 0.45:
		return math.Inf(1)
	case ratio < 0.55:
		return math.Pow(4.2577/(ratio-0.4325), 3.268)
	}
	return math.Pow(10, 11.737-12.077*ratio)
}

// FatigueDarter returns the repetitions to failure without an endurance limit.
//
// Source: Darter (1977), zero-maintenance design, from memory.
func FatigueDarter(ratio float64) float64 { return math.Pow(10, 17.61-17.61*ratio) }

// FatigueMechanistic returns the repetitions to half the slabs cracked.
//
// Source: mechanistic-empirical guide (2008), from memory.
func FatigueMechanistic(ratio float64) float64 {
	return math.Pow(10, 2*math.Pow(1/ratio, 1.22))
}

// Traffic is a number of passes at one stress ratio.
type Traffic struct {
	Passes float64
	Ratio  float64 // stress over flexural strength
}

// Damage returns the share of fatigue life used up by all passes (Miner's sum); 1
// is the end.
func Damage(life FatigueLife, passes ...Traffic) float64 {
	var sum float64
	for _, p := range passes {
		sum += p.Passes / life(p.Ratio)
	}
	return sum
}
