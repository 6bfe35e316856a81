package earlyage

import (
	"fmt"
	"strings"
	"time"
)

// Check returns everything about the column that cannot be right, all at once.
func (c Column) Check() error {
	if c.Weather == nil && c.sampled == nil || c.Ground == nil || c.Concrete.Properties == nil || c.Drying.Name == "" {
		panic("earlyage: a column needs weather, ground, concrete and a drying form")
	}
	wrong := c.numbersWrong()
	wrong = append(wrong, c.layersWrong()...)
	if c.Weather != nil && c.sampled == nil && wrong == nil {
		wrong = c.weatherWrong()
	}
	if wrong != nil {
		return fmt.Errorf("early-age column: %s", strings.Join(wrong, " "))
	}
	return nil
}

func (c Column) numbersWrong() (wrong []string) {
	for _, n := range []struct {
		what      string
		value     float64
		low, high float64
		unit      string
		hint      string
	}{
		{"Slab thickness", c.Thickness, 0.05, 1.5, "m", "Enter metres: 150 mm is 0.15."},
		{"Placing temperature", c.PlacingTemperature, 1, 45, "°C", "Below 1 °C it freezes, above 45 °C the set model was never compared."},
		{"Absorptivity", c.Absorptivity, 0, 1, "", "Grey concrete 0.5 to 0.65, black sheet 0.93."},
		{"Emissivity", c.Emissivity, 0.05, 1, "", "Concrete 0.88 to 0.95."},
		{"Length of the run", c.Until, 1, 10 * 365 * 24, "h", "Give hours after placing."},
		{"Wind factor", c.WindFactor, 0.01, 5, "", "1 leaves the wind as given."},
		{"Water over binder of the concrete", c.Concrete.Hydration.WaterBinder, 0.2, 1, "", "A mix without water never sets: see Mix.Check of package concrete."},
		{"Depth of cut", c.CutDepth, 0, c.Thickness, "m", "0 takes a quarter of the slab."},
	} {
		if !(n.value >= n.low && n.value <= n.high) {
			wrong = append(wrong, fmt.Sprintf("%s %.4g %s is outside %g to %g %s. %s", n.what, n.value, n.unit, n.low, n.high, n.unit, n.hint))
		}
	}
	return wrong
}

func (c Column) layersWrong() (wrong []string) {
	var deep float64
	for i, l := range c.Below {
		deep += l.Thickness
		if !(l.Thickness > 0 && l.Conductivity > 0 && l.Capacity > 0) {
			wrong = append(wrong, fmt.Sprintf("Layer %d under the slab (%s) needs thickness, conductivity and heat capacity above zero.", i+1, l.Name))
		}
	}
	if deep < 2 {
		wrong = append(wrong, fmt.Sprintf("The layers under the slab are %.2f m deep in all; at least 2 m is needed for the soil to take the heat. Make the last layer thicker.", deep))
	}
	for _, cover := range c.Covers {
		if cover.Off != 0 && cover.Off <= cover.On {
			wrong = append(wrong, fmt.Sprintf("Cover %q comes off at %.2f h, not after it went on at %.2f h.", cover.Name, cover.Off, cover.On))
		}
	}
	return wrong
}

// weatherWrong asks the weather wherever the run will, in the first fortnight, and
// every ten days after it.
func (c Column) weatherWrong() (wrong []string) {
	for hours := 0.0; ; {
		at := c.Placed.Add(time.Duration(hours * float64(time.Hour)))
		if p := c.Weather(at).problem(); p != "" {
			return []string{fmt.Sprintf("Weather at %s: %s.", at.Round(time.Second).UTC().Format("2006-01-02 15:04 UTC"), p)}
		}
		if hours >= c.Until {
			return nil
		}
		step := recordStep
		if hours > fineDays*dayHours {
			step = 10 * dayHours
		}
		hours = min(hours+step, c.Until)
	}
}
