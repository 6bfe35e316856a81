package climate

import (
	"errors"
	"fmt"
	"math"
	"time"
)

// DaySketch is what a person knows of a day without an hourly record: a newspaper
// forecast, or memory.
type DaySketch struct {
	Min, Max  float64  // air temperature at sunrise and in the afternoon [°C]
	DewPoint  *float64 // [°C]; nil: the least temperature of the day, the usual guess away from deserts
	WindCalm  float64  // wind at sunrise, 10 m up [m/s]
	WindBlown float64  // wind in the afternoon [m/s]
	Cloud     float64  // share of the sky covered [0..1]
}

// afternoonLag is how long after solar noon the air is warmest. Common practice.
const afternoonLag = 2 * time.Hour

// MakeDay returns an hourly record of one day, midnight to midnight in its zone,
// made from its least and greatest temperature; see [MakeDays].
func MakeDay(date time.Time, place Place, day DaySketch) (Series, error) {
	return MakeDays(date, place, []DaySketch{day})
}

// MakeDays returns an hourly record of days in a row, the first on the date given
// in its own zone. Temperature follows half waves from the least at sunrise to the
// greatest two hours after solar noon and on to the next sunrise; wind follows the
// same waves. The dew point holds through the day, so humidity is greatest at
// sunrise. The record is marked as made: it has the shape of a fine day and knows
// no front, shower or sea breeze.
//
// Source: the wave is common practice in crop models; a dew point near the least
// temperature is FAO Paper 56, Eq. (48), from memory.
func MakeDays(date time.Time, place Place, days []DaySketch) (Series, error) {
	if err := checkSketches(place, days); err != nil {
		return Series{}, err
	}
	y, m, d := date.Date()
	zone := date.Location()
	s := Series{WindHeight: StationWindHeight, Source: Origin{Name: "made day", Kind: Made, Zone: zone.String(),
		Notes: []string{"made from the least and greatest temperature of each day; a fine day's shape, no front or shower"}}}
	knots := waveKnots(y, m, d, zone, place, days)
	end := time.Date(y, m, d+len(days), 0, 0, 0, 0, zone)
	for t := time.Date(y, m, d, 0, 0, 0, 0, zone); !t.After(end); t = t.Add(time.Hour) {
		// the last midnight still belongs to the last day
		n := min(len(days)-1, dayNumber(t, y, m, d, zone))
		day := days[n]
		air := wave(knots, t, func(k waveKnot) float64 { return k.air })
		dew := day.Min
		if day.DewPoint != nil {
			dew = *day.DewPoint
		}
		h := NewHour(t, air, HumidityFromDewPoint(air, dew), wave(knots, t, func(k waveKnot) float64 { return k.wind }))
		h.Cloud = day.Cloud
		s.Hours = append(s.Hours, h)
	}
	return s, nil
}

// checkSketches names everything that cannot be so.
func checkSketches(place Place, days []DaySketch) error {
	errs := []error{place.Check()}
	if len(days) == 0 {
		errs = append(errs, errors.New("no day to make a record of: give at least one"))
	}
	for i, day := range days {
		where := fmt.Sprintf("day %d: ", i+1)
		if !(day.Min <= day.Max) {
			errs = append(errs, fmt.Errorf("%sleast temperature %g °C is above the greatest %g °C; are they swapped?", where, day.Min, day.Max))
		}
		if day.DewPoint != nil && !(*day.DewPoint <= day.Max) {
			errs = append(errs, fmt.Errorf("%sdew point %g °C is above the greatest temperature %g °C", where, *day.DewPoint, day.Max))
		}
		for _, c := range []struct {
			q int
			v float64
		}{{0, day.Min}, {0, day.Max}, {2, day.WindCalm}, {2, day.WindBlown}, {3, day.Cloud}} {
			if text, mend, impossible := doubtOf(quantitiesOfHour[c.q], c.v); impossible {
				errs = append(errs, fmt.Errorf("%s%s. %s", where, text, mend))
			} else if math.IsNaN(c.v) {
				errs = append(errs, fmt.Errorf("%s%s is not a number", where, quantitiesOfHour[c.q].name))
			}
		}
	}
	return errors.Join(errs...)
}

// waveKnot is a turning point of the day.
type waveKnot struct {
	t         time.Time
	air, wind float64
}

// waveKnots returns the turning points from the afternoon before the first day to
// the sunrise after the last, the outer days repeated.
func waveKnots(y int, m time.Month, d int, zone *time.Location, place Place, days []DaySketch) []waveKnot {
	var knots []waveKnot
	for i := -1; i <= len(days); i++ {
		day := days[max(0, min(i, len(days)-1))]
		rise, noon, _, _ := SunTimes(time.Date(y, m, d+i, 12, 0, 0, 0, zone), place.Latitude, place.Longitude)
		knots = append(knots, waveKnot{rise, day.Min, day.WindCalm}, waveKnot{noon.Add(afternoonLag), day.Max, day.WindBlown})
	}
	return knots
}

// wave returns the value at t on half cosines between the knots.
func wave(knots []waveKnot, t time.Time, of func(waveKnot) float64) float64 {
	for i := 1; i < len(knots); i++ {
		a, b := knots[i-1], knots[i]
		if !t.After(b.t) {
			share := float64(t.Sub(a.t)) / float64(b.t.Sub(a.t))
			return of(a) + (of(b)-of(a))*(1-math.Cos(math.Pi*share))/2
		}
	}
	return of(knots[len(knots)-1])
}

// dayNumber returns how many midnights lie between the first day and t.
func dayNumber(t time.Time, y int, m time.Month, d int, zone *time.Location) int {
	n := 0
	for t.Compare(time.Date(y, m, d+n+1, 0, 0, 0, 0, zone)) >= 0 {
		n++
	}
	return n
}
