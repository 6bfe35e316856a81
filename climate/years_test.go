package climate

import (
	"math"
	"path/filepath"
	"testing"
	"time"
)

var weatherYearFiles = []string{"tucson-hot-dry.epw", "indianapolis-cold-winter.epw", "miami-hot-humid.tmy3.csv"}

func placeOf(s Series) Place {
	return Place{*s.Source.Latitude, *s.Source.Longitude, *s.Source.Altitude}
}

// In the cloudless hours of three years the clear-sky sun must fit the files best
// half an hour before the stamp, which proves that hours are stamped at their end,
// the zone is right and sun is a mean; there the sums agree within 3 % (found:
// -2.3, +0.5, -0.4 %).
func TestClearSkyAgainstYears(t *testing.T) {
	dir := weatherYears(t)
	for _, name := range weatherYearFiles {
		s := readStation(t, filepath.Join(dir, name), 2026)
		e := Exposure{Place: placeOf(s)}
		least, best := math.Inf(1), time.Duration(0)
		for shift := time.Duration(0); shift <= time.Hour; shift += 15 * time.Minute {
			model, file, square, n := 0.0, 0.0, 0.0, 0
			for _, h := range s.Hours {
				if h.Cloud != 0 || h.Sun <= 0 {
					continue
				}
				at := h.Time.Add(-shift)
				zenith, _ := SunPosition(at, e.Place.Latitude, e.Place.Longitude)
				m := e.clearSky(at, zenith).Global
				model, file, square, n = model+m, file+h.Sun, square+(m-h.Sun)*(m-h.Sun), n+1
			}
			if rms := math.Sqrt(square / float64(n)); rms < least {
				least, best = rms, shift
			}
			if shift == 30*time.Minute && math.Abs(model/file-1) > 0.03 {
				t.Errorf("%s: clear sky sums to %.3f of the file's %d cloudless hours", name, model/file, n)
			}
		}
		if best != 30*time.Minute || least > 35 {
			t.Errorf("%s: fits best %v before the stamp with %.0f W/m2, want 30m within 35", name, best, least)
		}
	}
}

// Made from cloud alone, the sun of the year is 5 to 14 % less than the files say
// (0.93, 0.86, 0.95); the sky's heat, itself reckoned in the files, is met within
// 45 W/m2 rms by every form.
func TestCloudedSkyAgainstYears(t *testing.T) {
	dir := weatherYears(t)
	for _, name := range weatherYearFiles {
		s := readStation(t, filepath.Join(dir, name), 2026)
		e := Exposure{Place: placeOf(s)}
		model, file := 0.0, 0.0
		for _, h := range s.Hours {
			at := h.Time.Add(-30 * time.Minute)
			zenith, _ := SunPosition(at, e.Place.Latitude, e.Place.Longitude)
			model += e.clearSky(at, zenith).Global * CloudedSun(h.Cloud)
			file += h.Sun
		}
		if model/file < 0.85 || model/file > 1.05 {
			t.Errorf("%s: sun from cloud is %.3f of the file", name, model/file)
		}
		for _, form := range SkyForms() {
			square, n := 0.0, 0
			for _, h := range s.Hours {
				if h.Sky > 0 {
					m := SkyRadiation(CloudedEmissivity(form.Emissivity(h.Air, h.Humidity), h.Cloud), h.Air)
					square, n = square+(m-h.Sky)*(m-h.Sky), n+1
				}
			}
			if n > 0 && math.Sqrt(square/float64(n)) > 45 {
				t.Errorf("%s: %s is %.0f W/m2 rms from the file", name, form.Name, math.Sqrt(square/float64(n)))
			}
		}
	}
}
