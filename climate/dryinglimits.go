package climate

import "slabwright/source"

// Limits on the drying rate in kg/m2/h used on site.
const (
	DryingLimit         = 1.0 // ACI 305R, 0.2 lb/ft2/h: take precautions against plastic cracks
	DryingLimitLowBleed = 0.5 // half of it, for mixes that bleed little (silica fume, fines)
)

// RateLimit is one published limit on the drying rate.
type RateLimit struct {
	Name   string
	Rate   float64 // kg/m2/h
	Source source.Citation
}

// DryingLimits returns the published limits, the one held against first. None is a
// line between cracked and sound: a limit says when to get the fog spray out.
func DryingLimits() []RateLimit {
	return []RateLimit{
		{"precautions", DryingLimit, source.Cite("aci305", "0.2 lb/ft²h")},
		{"precautions, mix that bleeds little", DryingLimitLowBleed, source.Cite("aci305", "half of 0.2 lb/ft²h")},
		{"precautions, older Canadian editions", 0.75, source.Cite("csa-a23", "older editions").As(source.Memory)},
		{"onset of risk, Australian guidance", 0.5, source.Cite("ccaa-plastic", "onset of risk").As(source.Memory)},
	}
}
