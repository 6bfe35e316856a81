package steel

import "math"

// Trimmer is the steel laid across a re-entrant corner: it keeps the crack there
// narrow, it does not prevent it.
type Trimmer struct {
	Bars     int
	Diameter float64 // [mm]
	Spacing  float64 // [mm]
	Length   float64 // [mm]
	Within   float64 // width of the zone beside the corner that holds them [mm]
}

// LeastTrimmerArea, TrimmerZone and LeastTrimmerSpacing are the rule for top steel
// across a re-entrant corner, at 45 degrees: mm², mm, mm.
//
// Source: Concrete Society TR 34 as quoted on an engineering forum; seen.
const (
	LeastTrimmerArea    = 300.0
	TrimmerZone         = 500.0
	LeastTrimmerSpacing = 100.0
)

// LeastTrimmerLength returns the length, mm: a metre or 80 diameters, whichever is
// longer.
//
// Source: as [LeastTrimmerArea].
func LeastTrimmerLength(diameter float64) float64 { return math.Max(1000, 80*diameter) }

// TrimmerArea returns the steel of the bars, mm².
func TrimmerArea(t Trimmer) float64 { return float64(t.Bars) * CircleArea(t.Diameter) }

// TrimmerMeets reports whether the bars meet the rule.
func TrimmerMeets(t Trimmer) bool {
	return TrimmerArea(t) >= LeastTrimmerArea && t.Within <= TrimmerZone &&
		t.Spacing >= LeastTrimmerSpacing && t.Length >= LeastTrimmerLength(t.Diameter)
}
