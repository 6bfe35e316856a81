package earlyage

import (
	"math"
	"time"
)

// Feel is what the surface of the slab feels at one time.
type Feel struct {
	Air      float64 // °C
	Humidity float64 // 0 to 1
	Wind     float64 // at the slab, m/s
	Sun      float64 // on level ground, W/m2
	Longwave float64 // coming down from the sky, W/m2
}

// Weather gives the feel at any time of the run.
type Weather func(t time.Time) Feel

// blend is a share of the way from one feel to another.
func blend(a, b Feel, share float64) Feel {
	mix := func(x, y float64) float64 { return x + share*(y-x) }
	return Feel{mix(a.Air, b.Air), mix(a.Humidity, b.Humidity), mix(a.Wind, b.Wind), mix(a.Sun, b.Sun), mix(a.Longwave, b.Longwave)}
}

// record is a weather sampled once, so that the members of a set need not ask
// again: every ten minutes for the fine part of the run, daily means after it. The mean
// day keeps its sun, but not the swing that goes with it: what the swing of
// temperature does to radiation and drying on the mean (a watt or two per square
// metre at 10 K) is left out after the fortnight, and so are the stresses of the day.
type record struct {
	start, step float64 // hours after placing
	fine        []Feel
	dailyFrom   float64
	daily       []Feel // summed: the i-th is the sum of the means of all days before it

	moister, cloudier float64 // what changed has put in
	sunThrough        float64 // share of the sun that the change lets through
}

const (
	recordStep = 1.0 / 6 // h
	fineDays   = 14.0
	dayHours   = 24.0
)

// recorded asks the weather from start to end, in hours after placing.
func recorded(w Weather, placed time.Time, start, end float64) *record {
	r := &record{start: start, step: recordStep}
	at := func(hours float64) Feel {
		return w(placed.Add(time.Duration(math.Min(hours, end) * float64(time.Hour)))) // never past the run: the record may end with it
	}
	fineEnd := math.Min(end, fineDays*dayHours)
	for i := 0; ; i++ {
		hours := start + float64(i)*r.step
		r.fine = append(r.fine, at(hours))
		if hours >= fineEnd {
			break
		}
	}
	r.dailyFrom = fineEnd
	for day := fineEnd; day < end; day += dayHours {
		var mean Feel
		const parts = 12
		for k := range parts {
			mean = blend(mean, at(day+(float64(k)+0.5)*dayHours/parts), 1/float64(k+1))
		}
		if r.daily == nil {
			r.daily = []Feel{{}}
		}
		r.daily = append(r.daily, plus(r.daily[len(r.daily)-1], mean, 1))
	}
	return r
}

// plus adds so many times a feel to another.
func plus(a, b Feel, times float64) Feel {
	return Feel{a.Air + times*b.Air, a.Humidity + times*b.Humidity, a.Wind + times*b.Wind, a.Sun + times*b.Sun, a.Longwave + times*b.Longwave}
}

// coarseStep is the step of the march, h, after the fine part of a run: a day to the
// sixtieth day, then growing with the age to a week.
func coarseStep(hours float64) float64 { return math.Min(math.Max(hours/60, dayHours), 7*dayHours) }

// coarse is the mean feel over a time as long as the step of the march there, about
// an hour.
func (r *record) coarse(hours float64) Feel {
	end := r.dailyFrom + float64(len(r.daily)-1)*dayHours
	half := coarseStep(hours) / 2
	from, to := math.Max(hours-half, r.dailyFrom), math.Min(hours+half, end)
	if to-from < dayHours { // at an end: the nearest whole day
		from = math.Max(r.dailyFrom, math.Min(from, end-dayHours))
		to = from + dayHours
	}
	sum := plus(r.summed(to), r.summed(from), -1)
	return plus(Feel{}, sum, dayHours/(to-from))
}

// summed is the sum of daily means up to an hour, in days.
func (r *record) summed(hours float64) Feel {
	x := (hours - r.dailyFrom) / dayHours
	i := min(max(int(x), 0), len(r.daily)-2)
	return blend(r.daily[i], r.daily[i+1], x-float64(i))
}

// at returns the feel at a time in hours after placing.
func (r *record) at(hours float64) Feel {
	if hours > r.dailyFrom && len(r.daily) > 0 {
		return r.change(r.coarse(hours))
	}
	x := (hours - r.start) / r.step
	i := min(max(int(x), 0), len(r.fine)-2)
	return r.change(blend(r.fine[i], r.fine[i+1], math.Min(math.Max(x-float64(i), 0), 1)))
}

// problem returns what is wrong with a feel, "" if nothing.
func (f Feel) problem() string {
	switch {
	case f.Air == noWeather:
		return "the record has no weather for this time; give a longer record, or a shorter run"
	case !(f.Air > -60 && f.Air < 60):
		return "air temperature outside -60 to 60 °C"
	case !(f.Humidity >= 0 && f.Humidity <= 1):
		return "humidity outside 0 to 1 (a fraction, not per cent)"
	case !(f.Wind >= 0 && f.Wind < 60):
		return "wind outside 0 to 60 m/s"
	case !(f.Sun >= -5 && f.Sun < 1600):
		return "sun outside 0 to 1600 W/m2"
	case !(f.Longwave > 50 && f.Longwave < 700):
		return "sky radiation outside 50 to 700 W/m2"
	}
	return ""
}

// ask samples the column's weather once for all its members.
func (c Column) ask() *record {
	if c.sampled != nil {
		return c.sampled
	}
	return recorded(c.Weather, c.Placed, 0, c.Until)
}
