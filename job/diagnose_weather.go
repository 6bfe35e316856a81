package job

import (
	"fmt"
	"math"
	"sort"
	"time"

	"slabwright/climate"
	"slabwright/site"
	"slabwright/source"
)

// typedWeather is the record that was typed in, in order of time.
func typedWeather(p site.Pour) *climate.Series {
	s := climate.Series{Source: climate.Origin{Name: "typed in", Kind: climate.AtSite}, WindHeight: p.WindHeight.Or(climate.SlabWindHeight)}
	for _, h := range p.WeatherHours {
		hour := climate.NewHour(h.At, h.Air.Value, h.Humidity.Value, h.Wind.Value)
		hour.Cloud, hour.Sun = h.Cloud.OrNaN(), h.Sun.OrNaN()
		s.Hours = append(s.Hours, hour)
	}
	sort.SliceStable(s.Hours, func(a, b int) bool { return s.Hours[a].Time.Before(s.Hours[b].Time) })
	return &s
}

// madeWeather is the record made from the least and greatest of a day, from the day
// before the pour to three days after it.
func (d *diagnosis) madeWeather(p site.Pour) (*climate.Series, error) {
	day := p.WeatherDay
	sketch := climate.DaySketch{Min: day.Min.Value, Max: day.Max.Value,
		WindCalm:  d.use(day.WindCalm, 1.5, "wind at sunrise", " m/s", "not given; a usual night", "drying at dawn in proportion"),
		WindBlown: d.use(day.WindBlown, 4, "wind in the afternoon", " m/s", "not given; a usual afternoon", "drying in proportion"),
		Cloud:     d.use(day.Cloud, 0.3, "cloud", "", "not given; fair weather", "slab temperature by a few K")}
	if day.DewPoint != nil {
		v := day.DewPoint.Value
		sketch.DewPoint = &v
	}
	d.assume("weather of "+p.Name, fmt.Sprintf("made from %.0f to %.0f °C, every day alike", sketch.Min, sketch.Max), string(source.Assumed),
		"no hourly record; it knows no front, shower or change of wind", "cut window by hours when a front came through")
	first := p.Start.In(d.zone).AddDate(0, 0, -1)
	days := make([]climate.DaySketch, daysMade)
	for i := range days {
		days[i] = sketch
	}
	s, err := climate.MakeDays(time.Date(first.Year(), first.Month(), first.Day(), 0, 0, 0, 0, d.zone), d.place(), days)
	if err != nil {
		return nil, fmt.Errorf("weather_day: %w", err)
	}
	return &s, nil
}

// daysMade covers the day before, the pour and the run after it.
var daysMade = 2 + int(math.Ceil(runHours/24)) + 1
