package earlyage

import (
	"fmt"
	"math"
	"time"
)

// kilometresPerHour is a metre per second in km/h.
const kilometresPerHour = 3.6

// Doubts returns what about the weather of a column could be so but is more likely a
// slip, each with the likely mend. It is for a person to look at; the run goes on.
// What cannot be so is an error of [Column.Check].
//
// It looks at the first three days of the run: wind given in km/h and read as m/s is
// seldom too strong in a single hour, only blowing on average as it does in a gale.
func (c Column) Doubts() []string {
	end := math.Min(c.Until, 72)
	var wind, humid, sun, swing float64
	n := 0.0
	low, high := math.Inf(1), math.Inf(-1)
	for hours := 0.0; hours <= end; hours++ {
		f := c.Weather(c.Placed.Add(time.Duration(hours * float64(time.Hour))))
		wind, humid, sun, n = wind+f.Wind, humid+f.Humidity, math.Max(sun, f.Sun), n+1
		low, high = math.Min(low, f.Air), math.Max(high, f.Air)
	}
	wind, humid, swing = wind/n, humid/n, high-low
	var doubts []string
	say := func(format string, values ...any) { doubts = append(doubts, fmt.Sprintf(format, values...)) }
	const gale, drier = 6.0, 0.08 // m/s over the slab, about 11 m/s at 10 m; mean humidity of the driest deserts
	if wind > gale {
		say("Wind over the slab is %.1f m/s on average over %.0f h, a gale. Is the record in km/h? Then it is %.1f m/s: give the unit with the record.", wind, end, wind/kilometresPerHour)
	}
	if humid < drier {
		say("Humidity is %.0f %% on average over %.0f h, drier than deserts are. Is a percentage missing its sign, or a code for no value read as a number?", 100*humid, end)
	}
	if end >= 24 && sun == 0 {
		say("There is no sun in the first %.0f h. Is the slab indoors, or the column of the sun empty?", end)
	}
	if end >= 24 && swing > 30 {
		say("Air goes from %.0f to %.0f °C within %.0f h. Is part of the record in °F?", low, high, end)
	}
	return doubts
}
