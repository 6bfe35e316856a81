package climate

import (
	"math"
	"time"
)

// Declination returns the angle of the sun from the equator in degrees: +23.4 at
// midsummer of the northern half, -23.4 half a year on.
//
//	day  day of the year, 1 on 1 January; fractions allowed
//
// Source: Spencer, Search 2(5) 1971. Good to 0.05°.
func Declination(day float64) float64 {
	g := dayAngle(day)
	return degrees(0.006918 - 0.399912*math.Cos(g) + 0.070257*math.Sin(g) -
		0.006758*math.Cos(2*g) + 0.000907*math.Sin(2*g) -
		0.002697*math.Cos(3*g) + 0.00148*math.Sin(3*g))
}

// EquationOfTime returns how many minutes a sundial is ahead of a clock.
//
// Source: Spencer, Search 2(5) 1971. Good to half a minute or so.
func EquationOfTime(day float64) float64 {
	g := dayAngle(day)
	return 1440 / (2 * math.Pi) * (0.0000075 + 0.001868*math.Cos(g) - 0.032077*math.Sin(g) -
		0.014615*math.Cos(2*g) - 0.040849*math.Sin(2*g))
}

// SunDistanceFactor returns the inverse square of the distance to the sun, with 1
// as the yearly mean: the sun outside the air is this many times [SolarConstant].
//
// Source: Spencer, Search 2(5) 1971. From memory.
func SunDistanceFactor(day float64) float64 {
	g := dayAngle(day)
	return 1.00011 + 0.034221*math.Cos(g) + 0.00128*math.Sin(g) +
		0.000719*math.Cos(2*g) + 0.000077*math.Sin(2*g)
}

// SolarConstant is the radiation of the sun outside the air in W/m2 at the mean
// distance.
const SolarConstant = 1361.0

// SunPosition returns where the sun stands at an instant: its angle from straight
// overhead and its bearing clockwise from north, both in degrees. Above 90° the
// sun is down. Refraction, half a degree at the horizon, is left out.
//
//	t          the instant
//	latitude   degrees, north positive
//	longitude  degrees, east positive
//
// Within 0.3° of a full astronomical reckoning for the years around 2000.
//
// Source: Spencer, Search 2(5) 1971 with the spherical triangle of latitude,
// declination and hour angle.
func SunPosition(t time.Time, latitude, longitude float64) (zenith, azimuth float64) {
	day := DayOfYear(t)
	declination := radians(Declination(day))
	lat := radians(latitude)
	H := radians(hourAngle(t, longitude))
	sinLat, cosLat := math.Sincos(lat)
	cosZenith := sinLat*math.Sin(declination) + cosLat*math.Cos(declination)*math.Cos(H)
	zenith = degrees(math.Acos(math.Max(-1, math.Min(1, cosZenith))))
	east := math.Atan2(math.Sin(H)*math.Cos(declination), math.Cos(H)*sinLat*math.Cos(declination)-math.Sin(declination)*cosLat)
	return zenith, math.Mod(degrees(east)+180+360, 360)
}

// hourAngle returns the angle the earth has turned since solar noon, in degrees.
func hourAngle(t time.Time, longitude float64) float64 {
	u := t.UTC()
	minutes := float64(u.Hour()*60+u.Minute()) + float64(u.Second())/60
	solar := minutes + 4*longitude + EquationOfTime(DayOfYear(t))
	return solar/4 - 180
}

// DayOfYear returns the day of the year of an instant in UTC so that noon of
// 1 January is 1.0, as the yearly series expect.
func DayOfYear(t time.Time) float64 {
	u := t.UTC()
	since := float64(u.Hour()) + float64(u.Minute())/60 + float64(u.Second())/3600
	return float64(u.YearDay()) + (since-12)/24
}

// SunTimes returns sunrise, solar noon and sunset of the day of an instant in its
// own zone. Where the sun does not rise or does not set, up is false and rise and
// set stand six hours from noon.
func SunTimes(date time.Time, latitude, longitude float64) (rise, noon, set time.Time, up bool) {
	y, m, d := date.Date()
	noon = time.Date(y, m, d, 12, 0, 0, 0, date.Location())
	for range 3 { // the hour angle moves 1° in 4 minutes; one pass does, three settle the equation of time
		away := math.Mod(hourAngle(noon, longitude)+540+720, 360) - 180
		noon = noon.Add(-time.Duration(away * 4 * float64(time.Minute)))
	}
	cosHalf := -math.Tan(radians(latitude)) * math.Tan(radians(Declination(DayOfYear(noon))))
	half := 6 * time.Hour
	if up = math.Abs(cosHalf) < 1; up {
		half = time.Duration(degrees(math.Acos(cosHalf)) * 4 * float64(time.Minute))
	}
	return noon.Add(-half), noon, noon.Add(half), up
}

func dayAngle(day float64) float64    { return 2 * math.Pi * (day - 1) / 365 }
func degrees(radians float64) float64 { return radians * 180 / math.Pi }
func radians(degrees float64) float64 { return degrees * math.Pi / 180 }
