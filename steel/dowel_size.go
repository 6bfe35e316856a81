package steel

import (
	_ "embed"
	"fmt"

	"slabwright/internal/table"
)

//go:embed dowel_sizes.csv
var dowelSizesCSV string

var dowelSizes = table.Read("dowel_sizes.csv", dowelSizesCSV)

// DowelSize is what a rule asks for at a slab thickness, mm. Length is nil where
// the rule's lengths are not surely known.
type DowelSize struct {
	Rule                   string
	Length                 *float64
	Spacing                float64
	Diameter, DiameterHigh float64
}

// DowelSizeFor returns the dowel a rule asks for at a slab thickness in mm. Rules:
// "ufc" (airfield pavements), "journal" (industrial floors, trade journal), "aci"
// (ACI 302.1R and 360R round dowels).
func DowelSizeFor(rule string, thickness float64) (DowelSize, error) {
	known := false
	for i := range dowelSizes.Rows {
		if dowelSizes.Text(i, "rule") != rule {
			continue
		}
		known = true
		if thickness >= dowelSizes.Number(i, "from_mm") && thickness < dowelSizes.Number(i, "below_mm") {
			s := DowelSize{Rule: rule, Spacing: dowelSizes.Number(i, "spacing_mm"),
				Diameter: dowelSizes.Number(i, "diameter_mm"), DiameterHigh: dowelSizes.Number(i, "diameter_high_mm")}
			if dowelSizes.Text(i, "length_mm") != "" {
				length := dowelSizes.Number(i, "length_mm")
				s.Length = &length
			}
			return s, nil
		}
	}
	if !known {
		return DowelSize{}, fmt.Errorf("dowel rule %q is not known; choose ufc, journal or aci", rule)
	}
	return DowelSize{}, fmt.Errorf("slab thickness %g mm is outside the dowel table of rule %s; thinner slabs have no guidance for round dowels", thickness, rule)
}

// DowelDiameterByThumb returns an eighth of the slab thickness.
//
// Source: rule of thumb; seen in lecture slides.
func DowelDiameterByThumb(thickness float64) float64 { return thickness / 8 }

// LeastKeyedThickness and LeastDowelledThickness are the slab thicknesses, mm,
// below which keyed joints are not made and no dowel guidance exists.
//
// Source: Concrete Construction question page, after ACI 302.1R-89; seen.
const (
	LeastKeyedThickness    = 152.4
	LeastDowelledThickness = 127.0
)
