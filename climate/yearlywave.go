package climate

import (
	"fmt"
	"math"
	"time"
)

// YearlyWave returns the mean, half swing and coldest day of the yearly wave in the
// air temperature of a record, by least squares on one sine: what
// [GroundTemperature] wants when nobody measured the soil. Soil under turf or snow
// runs a degree or two warmer in winter than the air says.
//
// The record must cover a year or more; its last part year beyond whole years is
// left out so that no season weighs double.
//
// Source: the use of the air's first harmonic follows Kusuda and Achenbach (1965).
func YearlyWave(s Series) (mean, amplitude, coldest float64, err error) {
	from, to := s.Span()
	const year = 365 * 24 * time.Hour
	whole := int(math.Round(to.Sub(from).Hours()/(24*365)*1000) / 1000) // an hour short is a year
	if whole < 1 {
		return 0, 0, 0, fmt.Errorf("yearly wave: the record %s covers %.0f days, a year is needed", s.Source.Name, to.Sub(from).Hours()/24)
	}
	end := from.Add(time.Duration(whole) * year)
	var n, sum, cosine, sine float64
	for i := range s.Hours {
		h := &s.Hours[i]
		if math.IsNaN(h.Air) || !h.Time.Before(end) {
			continue
		}
		phase := 2 * math.Pi / 365 * DayOfYear(h.Time)
		n, sum = n+1, sum+h.Air
		cosine, sine = cosine+h.Air*math.Cos(phase), sine+h.Air*math.Sin(phase)
	}
	mean, cosine, sine = sum/n, 2*cosine/n, 2*sine/n
	amplitude = math.Hypot(cosine, sine)
	coldest = math.Mod(math.Atan2(-sine, -cosine)*365/(2*math.Pi)+365, 365)
	return mean, amplitude, coldest, nil
}
