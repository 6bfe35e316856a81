package climate

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// menzelRounding is how far the printed SI constants 0.315 and 0.060 lie from the
// US ones turned exactly: 0.44 lb/ft2/h/psi and 0.096 per mph.
const menzelRounding = 0.315/(0.44*poundPerSquareFoot/psi)*0.060/(0.096*kilometrePerHour/milePerHour) - 1

// Every drying form grows with wind, with the concrete's temperature and with
// dryness, and the four agree within the spread of their fits.
func TestDryingFormsProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		air := rapid.Float64Range(10, 38).Draw(t, "air")
		concrete := air + rapid.Float64Range(0, 10).Draw(t, "warmer")
		humidity := rapid.Float64Range(0.1, 0.8).Draw(t, "humidity")
		wind := rapid.Float64Range(0, 12).Draw(t, "wind")
		for _, form := range DryingForms() {
			e := Drying(form, concrete, air, humidity, wind)
			if e <= 0 {
				t.Fatalf("%s: warm concrete in dry air gives %g", form.Name, e)
			}
			for what, more := range map[string]float64{
				"wind":     Drying(form, concrete, air, humidity, wind+1),
				"concrete": Drying(form, concrete+1, air, humidity, wind),
				"dryness":  Drying(form, concrete, air, humidity-0.05, wind),
			} {
				if more <= e {
					t.Fatalf("%s: more %s does not dry more: %g then %g", form.Name, what, e, more)
				}
			}
		}
		if a, b := Drying(DryingMenzel, concrete, air, humidity, wind), Drying(DryingMenzelUS, concrete, air, humidity, wind); math.Abs(a/b-1) > menzelRounding {
			t.Fatalf("Menzel in SI and US units %g and %g are more than the rounding of %g apart", a, b, menzelRounding)
		}
	})
}

// Putting the critical humidity back gives the limit, for every form.
func TestCriticalHumidityIsInverse(t *testing.T) {
	for _, form := range DryingForms() {
		for _, limit := range []float64{0.25, 0.5, 1.0} {
			r := CriticalHumidity(form, 32, 27, 4, limit)
			if got := Drying(form, 32, 27, r, 4); math.Abs(got-limit) > 1e-9 {
				t.Errorf("%s at humidity %g: %g, want %g kg/m2/h", form.Name, r, got, limit)
			}
		}
	}
	if r := CriticalHumidity(DryingUno, 10, 10, 0, 1); r >= 0 {
		t.Errorf("a cold calm day never reaches 1 kg/m2/h, got critical humidity %g", r)
	}
}

// Dew on cold concrete is a negative rate.
func TestDewIsNegative(t *testing.T) {
	for _, form := range DryingForms() {
		if e := Drying(form, 10, 25, 0.9, 2); e >= 0 {
			t.Errorf("%s: %g, want dew", form.Name, e)
		}
	}
}

// Dew point and humidity are inverse; dew point <= wet bulb <= air.
func TestMoistAirOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		air := rapid.Float64Range(1, 45).Draw(t, "air")
		humidity := rapid.Float64Range(0.05, 1).Draw(t, "humidity")
		dew, wet := DewPoint(air, humidity), WetBulb(air, humidity, StandardPressure)
		if back := HumidityFromDewPoint(air, dew); math.Abs(back-humidity) > 1e-9 {
			t.Fatalf("humidity %g comes back as %g", humidity, back)
		}
		if dew > 1 && !(dew <= wet+0.02 && wet <= air+1e-6) {
			t.Fatalf("air %g humidity %g: dew point %g, wet bulb %g out of order", air, humidity, dew, wet)
		}
	})
	if !math.IsInf(DewPoint(20, 0), -1) {
		t.Error("dry air has no dew point")
	}
	if p := AirPressure(0); p != StandardPressure {
		t.Errorf("sea level %g kPa", p)
	}
	// Standard atmosphere at 1500 m is 84.56 kPa (from memory).
	if p := AirPressure(1500); math.Abs(p-84.56) > 0.02 {
		t.Errorf("1500 m: %g kPa, want 84.56", p)
	}
}

// The sun is as high an hour before solar noon as an hour after it, stands due
// north or south at noon and at 90° at sunrise and sunset.
func TestSunIsSymmetric(t *testing.T) {
	for _, latitude := range []float64{-54, -37.8, -10, 0, 25, 51.5, 65} {
		for month := time.January; month <= time.December; month++ {
			rise, noon, set, up := SunTimes(time.Date(2026, month, 15, 0, 0, 0, 0, time.FixedZone("", 10*3600)), latitude, 145)
			before, bearingBefore := SunPosition(noon.Add(-90*time.Minute), latitude, 145)
			after, bearingAfter := SunPosition(noon.Add(90*time.Minute), latitude, 145)
			// declination moves at most 0.4° a day, 0.05° in three hours
			if math.Abs(before-after) > 0.06 {
				t.Errorf("latitude %g month %d: zenith %g before noon, %g after", latitude, month, before, after)
			}
			if sum := math.Mod(bearingBefore+bearingAfter, 360); math.Min(sum, 360-sum) > 1.5 {
				t.Errorf("latitude %g month %d: bearings %g and %g are no mirror", latitude, month, bearingBefore, bearingAfter)
			}
			if !up {
				t.Errorf("latitude %g: the sun rises every day of the year", latitude)
			}
			for _, edge := range []time.Time{rise, set} {
				if z, _ := SunPosition(edge, latitude, 145); math.Abs(z-90) > 0.3 {
					t.Errorf("latitude %g month %d: zenith %g at sunrise or sunset", latitude, month, z)
				}
			}
		}
	}
	if _, _, _, up := SunTimes(time.Date(2026, 6, 21, 0, 0, 0, 0, time.UTC), 80, 0); up {
		t.Error("at 80° north the midsummer sun does not set")
	}
}

// Bearings turn through north in the southern half and through south in the
// northern.
func TestSunBearing(t *testing.T) {
	_, noon, _, _ := SunTimes(time.Date(2026, 9, 22, 0, 0, 0, 0, time.UTC), -38, 0)
	if _, a := SunPosition(noon, -38, 0); math.Min(a, 360-a) > 0.5 {
		t.Errorf("southern noon bearing %g, want north", a)
	}
	if _, a := SunPosition(noon, 51, 0); math.Abs(a-180) > 0.5 {
		t.Errorf("northern noon bearing %g, want south", a)
	}
	if _, a := SunPosition(noon.Add(-6*time.Hour), 51, 0); math.Abs(a-90) > 1 {
		t.Errorf("equinox sunrise bearing %g, want east", a)
	}
}

// A clear sky's parts make its whole; it falls with haze and a low sun.
func TestClearSkyParts(t *testing.T) {
	last := math.Inf(1)
	for z := 0.0; z < 90; z += 5 {
		i := ClearSkyIneichen(z, 200, AirPressure(200), 3, 1361)
		if sum := i.Direct*math.Cos(radians(z)) + i.Diffuse; math.Abs(sum-i.Global) > 1e-9 || i.Diffuse < 0 {
			t.Errorf("zenith %g: parts %g, whole %g, diffuse %g", z, sum, i.Global, i.Diffuse)
		}
		if i.Global >= last {
			t.Errorf("zenith %g: a lower sun gives more", z)
		}
		if hazy := ClearSkyIneichen(z, 200, AirPressure(200), 5, 1361); hazy.Global >= i.Global {
			t.Errorf("zenith %g: haze gives more", z)
		}
		last = i.Global
	}
	if night := ClearSkyIneichen(95, 0, StandardPressure, 3, 1361); night.Global != 0 || ClearSkyHaurwitz(95) != 0 {
		t.Error("no sun at night")
	}
}

// Cloud warms the sky up to black at full cover and cuts the sun down to a quarter.
func TestCloud(t *testing.T) {
	for _, form := range SkyForms() {
		clear := form.Emissivity(20, 0.5)
		if clear < 0.6 || clear > 0.95 {
			t.Errorf("%s: emissivity %g of a clear sky", form.Name, clear)
		}
		if CloudedEmissivity(clear, 1) != 1 || CloudedEmissivity(clear, 0) != clear {
			t.Errorf("%s: ends of the cloud correction", form.Name)
		}
	}
	if CloudedSun(0) != 1 || CloudedSun(1) != 0.25 {
		t.Error("ends of the sun through cloud")
	}
	// The branches of the diffuse share meet (from the printed coefficients, within 0.002 and 0.02).
	if d := DiffuseShare(0.22) - DiffuseShare(0.2200001); math.Abs(d) > 0.005 {
		t.Errorf("diffuse share jumps by %g at 0.22", d)
	}
	if d := DiffuseShare(0.80) - DiffuseShare(0.8000001); math.Abs(d) > 0.02 {
		t.Errorf("diffuse share jumps by %g at 0.80", d)
	}
}

// The soil solution obeys the heat equation: dT/dt = a d2T/dz2, by differences.
func TestGroundTemperatureObeysHeatEquation(t *testing.T) {
	const a, dz, dt = 0.06, 0.01, 0.1
	T := func(z, day float64) float64 { return GroundTemperature(z, day, 15, 8, 20, a) }
	for _, z := range []float64{0.2, 1, 3} {
		for _, day := range []float64{10, 100, 250} {
			rate := (T(z, day+dt) - T(z, day-dt)) / (2 * dt)
			bend := a * (T(z+dz, day) - 2*T(z, day) + T(z-dz, day)) / (dz * dz)
			if math.Abs(rate-bend) > 1e-5 {
				t.Errorf("z %g day %g: dT/dt %g, a d2T/dz2 %g K/day", z, day, rate, bend)
			}
		}
	}
}

// The log law composes: 10 to 2 m and then 2 to 0.5 m is 10 to 0.5 m.
func TestWindReductionComposes(t *testing.T) {
	got := WindReduction(2, 10, 0.03) * WindReduction(0.5, 2, 0.03)
	if want := WindReduction(0.5, 10, 0.03); math.Abs(got-want) > 1e-12 {
		t.Errorf("got %g, want %g", got, want)
	}
}

// The film grows with wind; the warm and cold faces differ by the ratio of their
// constants, 20.40/10.15, when their means are equal.
func TestFilm(t *testing.T) {
	for v := 0.0; v < 15; v += 0.5 {
		if FilmBentz(v+0.5) <= FilmBentz(v) {
			t.Errorf("film does not grow from %g m/s", v)
		}
	}
	if got := FilmASTMC680(30, 20, 3) / FilmASTMC680(20, 30, 3); math.Abs(got-20.40/10.15) > 1e-12 {
		t.Errorf("ratio %g", got)
	}
}

// The marched water balance meets the closed form at second order and keeps water.
func TestFilmHistoryOrder(t *testing.T) {
	bleed := Bleed{Rate: 1, End: 4}
	// a smooth drying rate with a closed integral: E = 0.5 + 0.4 sin t
	evaporation := func(h float64) float64 { return 0.5 + 0.4*math.Sin(h) }
	exact := func(h float64) float64 { return h - h*h/8 - (0.5*h + 0.4*(1-math.Cos(h))) }
	off := func(step float64) float64 {
		points, _ := FilmHistory(bleed.At, evaporation, step, 3)
		return math.Abs(points[len(points)-1].Film - exact(3))
	}
	if rate := math.Log2(off(0.1) / off(0.05)); math.Abs(rate-2) > 0.05 {
		t.Errorf("observed order %.2f, want 2", rate)
	}
	points, gone := FilmHistory(bleed.At, func(float64) float64 { return 0.1 }, 0.5, 3)
	if !math.IsNaN(gone) {
		t.Errorf("a film that lasts is gone at %g h", gone)
	}
	for _, p := range points {
		if math.Abs(p.Film-(p.Bled-p.Evaporated)) > 1e-12 {
			t.Errorf("water is lost at %g h", p.Hours)
		}
	}
	if _, gone := FilmHistory(bleed.At, func(float64) float64 { return 2 }, 0.5, 3); gone != 0 {
		t.Errorf("drying that outruns bleeding from the start: gone at %g h, want 0", gone)
	}
	if FilmExhausted(bleed, 2) != 0 || !math.IsInf(FilmExhausted(bleed, 0), 1) {
		t.Error("ends of the closed form")
	}
}

// The limit held against stands first, every limit has a source and none is above it.
func TestDryingLimits(t *testing.T) {
	for i, l := range DryingLimits() {
		if l.Source.Title == "" || l.Rate > DryingLimit || i == 0 && l.Rate != DryingLimit {
			t.Errorf("limit %+v", l)
		}
	}
}
