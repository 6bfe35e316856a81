package job

import (
	"fmt"
	"math"
	"time"

	"slabwright/climate"
	"slabwright/source"
)

// The weather that nobody has recorded yet, after the end of a record. A mean year is
// enough there: what cracks a slab late is the cold season and drying.
const (
	yearDays   = 365.25
	dailySwing = 4.0  // K, half the range of the air in a day; usual of middle latitudes
	usualCloud = 0.6  // share of the sky covered
	afterStep  = 3.0  // h between two made records
	warmestBy  = 15.0 // h of the day
)

// weatherOn continues a record with a made year, so that a slab can be followed for
// so many hours after it was placed.
func (d *diagnosis) weatherOn(p *pourRun, hours float64) climate.Exposure {
	e := p.weather
	e.Series.Hours = append([]climate.Hour(nil), e.Series.Hours...)
	_, last := e.Series.Span()
	until := p.centre.Add(time.Duration((hours + 48) * float64(time.Hour)))
	if !until.After(last) {
		return e
	}
	year := d.madeYear(p)
	for t := last.Add(time.Duration(afterStep * float64(time.Hour))); !t.After(until.Add(24 * time.Hour)); t = t.Add(time.Duration(afterStep * float64(time.Hour))) {
		e.Series.Hours = append(e.Series.Hours, year.at(t, d.zone))
	}
	d.assume("weather after the record", fmt.Sprintf("a mean year, air %.0f to %.0f °C, humidity %.0f %%", year.mean-year.half, year.mean+year.half, 100*year.humidity),
		string(source.Default), "the record ends "+d.clock(last)+"; the replay goes on for longer", "what opens and cracks after the first weeks")
	return e
}

// madeYear is a year that only knows the seasons and a mean day.
type madeYear struct {
	mean, half     float64 // of the air through the year, °C and K
	humidity, wind float64
	coldest        float64 // day of the year
}

func (d *diagnosis) madeYear(p *pourRun) madeYear {
	low, high := d.year()
	y := madeYear{mean: (low + high) / 2, half: (high - low) / 2, humidity: d.yearHumidity(), coldest: 25}
	if d.job.Place.Latitude.Or(50) < 0 {
		y.coldest += yearDays / 2
	}
	for _, h := range p.weather.Series.Hours {
		y.wind += h.Wind / float64(len(p.weather.Series.Hours))
	}
	return y
}

// at returns the weather of an hour: warmer and drier by day, colder in winter.
func (y madeYear) at(t time.Time, zone *time.Location) climate.Hour {
	local := t.In(zone)
	season := -math.Cos(2 * math.Pi * (float64(local.YearDay()) - y.coldest) / yearDays)
	day := math.Cos(2 * math.Pi * (float64(local.Hour()) + float64(local.Minute())/60 - warmestBy) / 24)
	h := climate.NewHour(t, y.mean+y.half*season+dailySwing*day, math.Min(0.98, math.Max(0.1, y.humidity-0.15*day)), y.wind)
	h.Cloud = usualCloud
	return h
}
