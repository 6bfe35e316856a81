package unit

import (
	"errors"
	"math"
	"strings"
	"testing"
)

func TestPublished(t *testing.T) {
	results := Checks()
	if len(results) < 30 {
		t.Fatalf("only %d published rows", len(results))
	}
	for _, r := range results {
		if !r.OK {
			t.Error(r)
		}
	}
}

// What an engineer types, with the value worked by hand in the base unit.
func TestParse(t *testing.T) {
	for _, c := range []struct {
		q    Quantity
		text string
		want float64
	}{
		{LengthOf, "6 mm", 0.006}, {LengthOf, "150mm", 0.150}, {LengthOf, "0.25 in", 0.00635},
		{LengthOf, `1/4"`, 0.00635}, {LengthOf, `3'-6 1/2"`, 1.0795}, {LengthOf, "3' 6 1/2\"", 1.0795},
		{LengthOf, "3′-6½″", 1.0795}, {LengthOf, "3 ft 6.5 in", 1.0795}, {LengthOf, "3ft6.5in", 1.0795},
		{LengthOf, "12.5 ft", 3.81}, {LengthOf, "5,65 m", 5.65}, {LengthOf, "0,250 m", 0.25},
		{LengthOf, "1 1/4 in", 0.03175}, {LengthOf, "1-1/4 in", 0.03175}, {LengthOf, "−3 mm", -0.003},
		{LengthOf, "-3'-6\"", -1.0668}, {LengthOf, "−6 1/2 in", -0.1651}, {LengthOf, "4\u202f500\u2009mm", 4.5},
		{LengthOf, "0", 0}, {LengthOf, "12.5e-3 m", 0.0125}, {LengthOf, "10 mil", 0.000254}, {LengthOf, "350 µm", 0.00035},
		{LengthOf, "15 CM", 0.15}, {LengthOf, "3' 6''", 1.0668}, {LengthOf, ".5 m", 0.5}, {LengthOf, "1.234.567 mm", 1234.567},
		{LengthOf, "1,234.5 mm", 1.2345}, {LengthOf, "1.234,5 mm", 1.2345}, {LengthOf, "+2 m", 2},
		{StressOf, "4000 psi", 27.57902917}, {StressOf, "4 000 psi", 27.57902917}, {StressOf, "27.6 MPa", 27.6},
		{StressOf, "27.6 mpa", 27.6}, {StressOf, "30 N/mm²", 30}, {StressOf, "4 ksi", 27.57902917},
		{TemperatureOf, "25C", 25}, {TemperatureOf, "77F", 25}, {TemperatureOf, "77 °F", 25}, {TemperatureOf, "−5 ºC", -5},
		{TemperatureOf, "298.15 K", 25}, {TemperatureOf, "25 deg C", 25}, {TemperatureOf, "0 °F", -17.7777777778},
		{DifferenceOf, "15 K", 15}, {DifferenceOf, "27 F", 15},
		{SpeedOf, "20 km/h", 5.5555555556}, {SpeedOf, "20 kph", 5.5555555556}, {SpeedOf, "10 mph", 4.4704}, {SpeedOf, "5 m/s", 5},
		{ShareOf, "55 %", 0.55}, {ShareOf, "0.55", 0.55}, {ShareOf, "0,55", 0.55}, {ShareOf, "55%", 0.55}, {ShareOf, "0", 0}, {ShareOf, "100 %", 1},
		{DensityOf, "340 kg/m3", 340}, {DensityOf, "564 lb/yd3", 334.6078896}, {DensityOf, "564 lb/yd³", 334.6078896}, {DensityOf, "150 pcf", 2402.769},
		{WaterOf, "10 L/m3", 10}, {WaterOf, "2 gal/yd3", 9.902264}, {WaterOf, "2 gal per yd3", 9.902264},
		{ForceOf, "40 kN", 40}, {ForceOf, "9 kip", 40.033994}, {ForceOf, "9000 lbf", 40.033994},
		{DurationOf, "9h30m", 9.5}, {DurationOf, "9 h 30 min", 9.5}, {DurationOf, "90 min", 1.5}, {DurationOf, "2 d 4 h", 52}, {DurationOf, "0.5 h", 0.5},
		{DryingOf, "0.2 lb/ft2/h", 0.9764856}, {DryingOf, "1 kg/(m2 h)", 1}, {DryingOf, "1 kg/m²/h", 1},
		{SupportOf, "200 pci", 54.2894}, {SupportOf, "0.05 N/mm3", 50}, {AngleOf, "30°", 30}, {AngleOf, "12° 30'", 12.5}, {AngleOf, `-12°30'36"`, -12.51},
		{PressureOf, "100 psi", 689.4757}, {VolumeOf, "8 yd3", 6.116438864}, {ExpansionOf, "10 µε/K", 1e-5}, {ExpansionOf, "1.0e-5 /K", 1e-5},
	} {
		got, err := Parse(c.q, c.text)
		if err != nil {
			t.Errorf("%s %q: %v", c.q, c.text, err)
		} else if math.Abs(got-c.want) > 1e-6*math.Max(math.Abs(c.want), 1e-3) {
			t.Errorf("%s %q: got %.9g, want %.9g", c.q, c.text, got, c.want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct {
		q         Quantity
		text, has string // the words the error must carry
	}{
		{LengthOf, "6", "mm, cm"}, {LengthOf, "", "nothing was typed"}, {LengthOf, "mm", "no number"},
		{StressOf, "4000", "MPa"}, {TemperatureOf, "0", "°F"}, {TemperatureOf, "25", "°C, °F"},
		{LengthOf, "6 m m m", "no unit of length"}, {StressOf, "30 mPa", "Did you mean 30 MPa?"},
		{LengthOf, "6 mn", "Did you mean 6 mm?"}, {LengthOf, "1,500 mm", "1.500 or 1500"},
		{LengthOf, `3'-14"`, "more than one ft takes"}, {LengthOf, "30 kN", "a unit of force"},
		{StressOf, "25 C", "a unit of temperature"}, {TemperatureOf, "-300 C", "absolute zero"},
		{ShareOf, "55", "Did you mean 55 %?"}, {ShareOf, "1", "1 % or 100 %"}, {LengthOf, "1.5 1/2 in", "decimals and a fraction"},
		{LengthOf, "1/0 in", "fraction"}, {LengthOf, "12 34 mm", "groups of three"}, {DurationOf, "9h75m", "more than one h"},
		{DurationOf, "9:30", "no unit"}, {AngleOf, "12° 75'", "outside 0 to 60"}, {LengthOf, "1..2 m", "not a number"},
		{LengthOf, "NaN m", "no number"}, {LengthOf, "1e400 m", "not a number"}, {SpeedOf, "20", "km/h"},
		{WaterOf, "10", "gal/yd3"}, {DensityOf, "2400 kg/m", "kg/m3"}, {LengthOf, "6 inchs", "Did you mean 6 in?"},
	} {
		v, err := Parse(c.q, c.text)
		var asked *ParseError
		if !errors.As(err, &asked) {
			t.Errorf("%s %q: read as %g, want an error with %q", c.q, c.text, v, c.has)
		} else if !strings.Contains(err.Error(), c.has) {
			t.Errorf("%s %q: error %q does not say %q", c.q, c.text, err, c.has)
		}
	}
}

// A bare number is the same refusal for every quantity but a share.
func TestBareNumberNamesEveryUnit(t *testing.T) {
	for _, u := range units {
		if u.Quantity == ShareOf {
			continue
		}
		_, err := Parse(u.Quantity, "37")
		if err == nil || !strings.Contains(err.Error(), u.Name) {
			t.Errorf("37 as %s: %v; want every unit named, %s too", u.Quantity, err, u.Name)
		}
	}
}

func TestTypedParsers(t *testing.T) {
	if x, err := ParseLength("6 mm"); err != nil || x != 0.006 {
		t.Errorf("length: %v %v", x, err)
	}
	if x, err := ParseDuration("9h30m"); err != nil || x.Time().Minutes() != 570 {
		t.Errorf("duration: %v %v", x, err)
	}
	if x, err := ParseLength("6 in"); err != nil || x != 0.1524 {
		t.Errorf("6 in is %v %v, want 0.1524 to the last figure", float64(x), err)
	}
	if _, err := ParseStress("4000"); err == nil {
		t.Error("4000 without a unit was taken for a stress")
	}
	if x, err := ParseWaterDose("2 gal/yd3"); err != nil || math.Abs(float64(x)-9.902264) > 1e-6 {
		t.Errorf("water: %v %v", x, err)
	}
}

func TestNearest(t *testing.T) {
	words := []string{"thickness_m", "bearing_deg", "outline_m"}
	for _, c := range []struct{ word, want string }{
		{"thicknes_m", "thickness_m"}, {"Thickness_M", "thickness_m"}, {"outlien_m", "outline_m"}, {"colour", ""}, {"", ""},
	} {
		if got, _ := Nearest(c.word, words); got != c.want {
			t.Errorf("nearest to %q: got %q, want %q", c.word, got, c.want)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{`3'-6 1/2"`, "1,500.5 mm", "−5 ºC", "9h30m", "12° 30'", "½ in", "1e-", "/", "--1 m", "1 000,5 psi", "'", "0x1p4 m"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, q := range []Quantity{LengthOf, StressOf, TemperatureOf, DurationOf, AngleOf, ShareOf} {
			v, err := Parse(q, text)
			if err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
				t.Fatalf("%s %q gave %v", q, text, v)
			}
			if err != nil && err.Error() == "" {
				t.Fatalf("%s %q: empty error", q, text)
			}
		}
	})
}
