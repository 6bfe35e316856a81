package unit

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		q     Quantity
		value float64
		s     System
		want  string
	}{
		{LengthOf, 0.150, Metric, "150 mm"}, {LengthOf, 0.00035, Metric, "0.35 mm"}, {LengthOf, 5.65, Metric, "5.65 m"},
		{LengthOf, -0.003, Metric, "−3.0 mm"}, {LengthOf, 1.0795, US, "3′-6 1/2″"}, {LengthOf, 0.00635, US, "1/4″"},
		{LengthOf, 0.1524, US, "6″"}, {LengthOf, 0.00035, US, "0.014 in"}, {LengthOf, 3.6576, US, "12′-0″"}, {LengthOf, -1.0795, US, "−3′-6 1/2″"},
		{StressOf, 27.6, Metric, "27.6 MPa"}, {StressOf, 27.57902917, US, "4000 psi"}, {TemperatureOf, -5, Metric, "−5.0 °C"},
		{TemperatureOf, 25, US, "77 °F"}, {TemperatureOf, -0.01, Metric, "0.0 °C"}, {ShareOf, 0.55, Metric, "55 %"},
		{DensityOf, 2400, Metric, "2400 kg/m³"}, {WaterOf, 10, US, "2.02 gal/yd³"}, {SupportOf, 54.2894, US, "200 pci"},
		{AngleOf, 30, Metric, "30.0°"}, {LengthOf, math.NaN(), Metric, "not known"}, {LengthOf, math.Inf(1), US, "without limit"},
		{ForceOf, 40.034, US, "9.0 kip"}, {DryingOf, 1, Metric, "1.00 kg/m²/h"},
	} {
		want := withThin(c.want)
		if got := Format(c.q, c.value, c.s); got != want {
			t.Errorf("%s %g %s: got %q, want %q", c.q, c.value, c.s, got, want)
		}
	}
	if got, want := Duration(9.5).Format(Metric), "9\u202fh 30\u202fmin"; got != want {
		t.Errorf("duration: got %q, want %q", got, want)
	}
}

// withThin puts the narrow space before the unit, which in the table above is the
// last blank unless the text is in feet and inches.
func withThin(s string) string {
	runes := []rune(s)
	if runes[len(runes)-1] == '″' || s == "not known" || s == "without limit" {
		return s
	}
	for i := len(runes) - 1; i >= 0; i-- {
		if runes[i] == ' ' {
			runes[i] = '\u202f'
			break
		}
	}
	return string(runes)
}

// Any value, in either system, reads back to within half the last figure shown.
func TestRoundTrip(t *testing.T) {
	var quantities []Quantity
	for _, u := range units {
		if u.Factor == 1 && u.Offset == 0 && (len(quantities) == 0 || quantities[len(quantities)-1] != u.Quantity) {
			quantities = append(quantities, u.Quantity)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		q := rapid.SampledFrom(quantities).Draw(t, "quantity")
		s := rapid.SampledFrom([]System{Metric, US}).Draw(t, "system")
		value := rapid.Float64Range(-200, 200).Draw(t, "value")
		if q == ExpansionOf {
			value *= 1e-6
		}
		text := Format(q, value, s)
		back, err := Parse(q, text)
		if err != nil {
			t.Fatalf("%s %g written as %q: %v", q, value, text, err)
		}
		if off, step := math.Abs(back-value), Step(q, value, s); off > step/2*(1+1e-9) {
			t.Fatalf("%s %g written as %q reads as %g: off by %g, step %g", q, value, text, back, off, step)
		}
	})
}

// There and back between any two units of a quantity.
func TestConvertRoundTrip(t *testing.T) {
	for _, a := range units {
		for _, b := range Units(a.Quantity) {
			there := Convert(a.Quantity, 12.5, a.Name, b.Name)
			if back := Convert(a.Quantity, there, b.Name, a.Name); math.Abs(back-12.5) > 1e-11*math.Max(1, math.Abs(a.Offset/a.Factor)) {
				t.Errorf("12.5 %s to %s and back gives %.15g", a.Name, b.Name, back)
			}
		}
	}
}

// Every spelling of the table is read as its own unit.
func TestEverySpelling(t *testing.T) {
	for _, u := range units {
		for _, s := range append([]string{u.Name}, u.Also...) {
			got, err := Parse(u.Quantity, "0.5 "+s)
			if want := u.toBase(0.5); err != nil || math.Abs(got-want) > 1e-12*math.Max(1, math.Abs(want)) {
				t.Errorf("0.5 %s as %s: got %g, %v; want %g", s, u.Quantity, got, err, want)
			}
		}
		if u.Exactness != "exact" && u.Exactness != "nominal" || u.Source == "" {
			t.Errorf("%s: exactness %q, source %q", u.Name, u.Exactness, u.Source)
		}
	}
}
