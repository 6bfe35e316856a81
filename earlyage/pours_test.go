package earlyage

import (
	"math"
	"testing"
	"time"

	"slabwright/climate"
	"slabwright/concrete"
)

// day is a made day: air swings about a mean, clear sun by Haurwitz at a latitude,
// sky by Brunt. The longitude puts solar noon at 12 UTC.
func day(mean, swing, humidity, wind, latitude float64) Weather {
	return func(t time.Time) Feel {
		clock := float64(t.Hour()) + float64(t.Minute())/60 + float64(t.Second())/3600
		air := mean + swing*math.Sin(2*math.Pi*(clock-9)/24)
		zenith, _ := climate.SunPosition(t, latitude, 0)
		sky := climate.SkyBrunt(climate.VapourPressure(air, humidity))
		return Feel{Air: air, Humidity: humidity, Wind: wind,
			Sun: climate.ClearSkyHaurwitz(zenith), Longwave: climate.SkyRadiation(sky, air)}
	}
}

// pourOn is a 150 mm slab of an ordinary mix on crushed stone and soil.
func pourOn(t testing.TB, placed time.Time, placing, ground float64, w Weather) Column {
	t.Helper()
	mix, err := concrete.DefaultMix(30, "CEM I 42.5N")
	if err != nil {
		t.Fatal(err)
	}
	mix.PlacingTemperature = placing
	const thickness = 0.15
	long := ENLongTerm(mix, thickness, 0.6, 3)
	return Column{Concrete: FromMix(mix, mix.EN1992(), long, thickness), Thickness: thickness,
		Below:  []Layer{{"crushed stone", 0.15, 1.4, 1.8e6}, {"soil", 2, 1.5, 2.0e6}},
		Placed: placed, PlacingTemperature: placing, Ground: func(float64) float64 { return ground },
		Weather: w, WindFactor: 1, Absorptivity: DefaultAbsorptivity, Emissivity: DefaultEmissivity,
		Drying: climate.DryingUno, Until: 72}
}

func hot(t testing.TB) Column {
	return pourOn(t, july, 30, 24, day(32, 6, 0.45, 2, 40))
}
func mild(t testing.TB) Column {
	return pourOn(t, time.Date(2026, 5, 10, 8, 0, 0, 0, time.UTC), 20, 15, day(18, 5, 0.6, 2, 45))
}
func cold(t testing.TB) Column {
	return pourOn(t, november, 14, 9, day(8, 3, 0.75, 2, 50))
}

var (
	july     = time.Date(2026, 7, 10, 8, 0, 0, 0, time.UTC)
	november = time.Date(2026, 11, 10, 9, 0, 0, 0, time.UTC)
)

// flat is saturated still air at one temperature under a sky that radiates like it.
func flat(air float64) Weather {
	return func(time.Time) Feel {
		return Feel{Air: air, Humidity: 1, Longwave: climate.SkyRadiation(1, air)}
	}
}

// overcast is the same air under full cloud.
func overcast(w Weather) Weather {
	return func(t time.Time) Feel {
		f := w(t)
		f.Sun *= climate.CloudedSun(1)
		f.Longwave = climate.SkyRadiation(climate.CloudedEmissivity(climate.SkyBrunt(climate.VapourPressure(f.Air, f.Humidity)), 1), f.Air)
		return f
	}
}
