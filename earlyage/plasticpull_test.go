package earlyage

import (
	"math"
	"testing"

	"slabwright/climate"
	"slabwright/internal/table"
)

// tornAt follows a slab under a steady drying rate to final set and returns the
// chance that it tore.
func tornAt(rate, bled, initial, final float64) float64 {
	film := bleeding{bleed: climate.Bleed{Rate: 2 * bled / initial, End: initial}, Gone: math.NaN()}
	var p pull
	const dt = 1.0 / 60
	for hours := 0.0; hours < final-1e-9; hours += dt {
		before := film.Deficit
		toFinal := held((hours + dt - initial) / (final - initial))
		film.step(hours, dt, rate, toFinal, 0)
		p.step(film.Deficit-before, film.Film > 0, (hours+dt)/initial, toFinal)
	}
	return p.chance()
}

// The chance against the published limits, in the heat they were made for: a 150 mm
// slab that bleeds 1 % and sets in 2 to 3 h. The shares are our own reading of
// "take precautions" and "safe".
func TestPullAgreesWithThePublishedLimits(t *testing.T) {
	limits := map[string]float64{}
	for _, l := range climate.DryingLimits() {
		limits[l.Name] = l.Rate
	}
	for _, c := range []struct {
		name        string
		rate, bled  float64
		least, most float64
	}{
		{"ACI 305R limit, usual bleeding", limits["precautions"], 1.5, 0.3, 0.8},
		{"ACI 305R limit for mixes that bleed little", limits["precautions, mix that bleeds little"], 0.4, 0.3, 0.7},
		{"older Canadian limit, usual bleeding", limits["precautions, older Canadian editions"], 1.5, 0.05, 0.5},
		{"Australian onset of risk, usual bleeding", limits["onset of risk, Australian guidance"], 1.5, 0, 0.05},
		{"Australian onset of risk, half the usual bleeding", limits["onset of risk, Australian guidance"], 0.75, 0.02, 0.5},
		{"a quarter of the limit", limits["precautions"] / 4, 1.5, 0, 0.01},
		{"one and a half times the limit", 1.5 * limits["precautions"], 1.5, 0.9, 1},
	} {
		if got := tornAt(c.rate, c.bled, 2.5, 3.75); !(got >= c.least && got <= c.most) {
			t.Errorf("%s, %.2f kg/m2/h over %.2f kg/m2 of bleed water: chance %.2f, want %.2f to %.2f", c.name, c.rate, c.bled, got, c.least, c.most)
		}
	}
}

// More drying, less bleeding and a slower set never lower the chance, and the
// answer does not hang on the steps.
func TestPullIsMonotone(t *testing.T) {
	for _, bled := range []float64{0, 0.3, 0.8, 1.5, 3} {
		for rate := 0.1; rate < 2; rate += 0.1 {
			if a, b := tornAt(rate, bled, 3, 4.5), tornAt(rate+0.1, bled, 3, 4.5); b < a-1e-9 {
				t.Fatalf("bled %.1f: %.2f kg/m2/h %.4f, %.2f kg/m2/h %.4f", bled, rate, a, rate+0.1, b)
			}
			if a, b := tornAt(rate, bled, 3, 4.5), tornAt(rate, bled+0.2, 3, 4.5); b > a+1e-9 {
				t.Fatalf("%.2f kg/m2/h: %.4f with %.1f kg/m2 of bleed water, %.4f with more", rate, a, bled, b)
			}
			if a, b := tornAt(rate, bled, 3, 4.5), tornAt(rate, bled, 4, 6); b < a-1e-9 {
				t.Fatalf("bled %.1f, %.2f kg/m2/h: %.4f, set an hour later %.4f", bled, rate, a, b)
			}
		}
	}
}

// The pull by a second route: without bleeding and at a steady rate the suction is
// the integral of the stiffness, closed form of an exponential.
func TestSuctionInClosedForm(t *testing.T) {
	const rate, initial = 0.4, 3.0
	var p pull
	const n = 6000
	for i := 1; i <= n; i++ {
		p.step(rate*initial/n, false, float64(i)/n, 0)
	}
	growth := math.Log(pullValue["strength_initial"] / pullValue["strength_placed"])
	exact := pullValue["suction_initial"] * rate * initial / growth * (1 - math.Exp(-growth))
	if math.Abs(p.Suction-exact) > 0.001*exact {
		t.Errorf("suction %.4f kPa, closed form %.4f", p.Suction, exact)
	}
	p.step(0, true, 1, 0)
	if p.Suction != 0 || p.Tension != 0 {
		t.Errorf("rewetted: suction %.2f kPa", p.Suction)
	}
	if got, want := SuctionPull(30, 0.3), 30*0.4/0.7; math.Abs(got-want) > 1e-12 {
		t.Errorf("pull %.4f kPa, want %.4f", got, want)
	}
	if SuctionPull(30, 0.5) != 0 {
		t.Error("a fluid must take no tension")
	}
	for _, row := range table.Read("plastic_pull.csv", pullTable).Records() {
		if number(row["value"]) <= 0 || row["meaning"] == "" || row["known"] == "" {
			t.Errorf("row %v", row)
		}
	}
}
