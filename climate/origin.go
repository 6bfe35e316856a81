package climate

import (
	"fmt"
	"math"
	"strings"
)

// Kind says what sort of record a series is. A reader of a report must never take
// a forecast or a made day for a measurement.
type Kind string

// The kinds of record.
const (
	Forecast Kind = "forecast"     // said beforehand
	Station  Kind = "station"      // measured at a weather station
	AtSite   Kind = "site"         // measured beside the slab
	Typical  Kind = "typical year" // a year put together from several
	Made     Kind = "made"         // reckoned from a day's least and greatest
)

// Origin says where a series comes from and how far that is from the slab.
type Origin struct {
	Name      string   `json:"name,omitempty"`       // station or file
	Kind      Kind     `json:"kind"`                 //
	Distance  *float64 `json:"distance_m,omitempty"` // from the slab
	Higher    *float64 `json:"higher_m,omitempty"`   // station above the slab
	Latitude  *float64 `json:"latitude,omitempty"`   // of the station
	Longitude *float64 `json:"longitude,omitempty"`  // of the station
	Altitude  *float64 `json:"altitude_m,omitempty"` // of the station
	Zone      string   `json:"zone,omitempty"`       // the record's own clock
	Notes     []string `json:"notes,omitempty"`      // what the reader did or left out
}

// String returns the origin as one line under a chart.
func (o Origin) String() string {
	parts := []string{}
	if o.Name != "" {
		parts = append(parts, o.Name)
	}
	if o.Kind != "" {
		parts = append(parts, string(o.Kind))
	}
	if o.Distance != nil {
		if *o.Distance < 1000 {
			parts = append(parts, fmt.Sprintf("%.0f m from the slab", *o.Distance))
		} else {
			parts = append(parts, fmt.Sprintf("%.0f km from the slab", *o.Distance/1000))
		}
	}
	if o.Higher != nil && *o.Higher != 0 {
		side := "above"
		if *o.Higher < 0 {
			side = "below"
		}
		parts = append(parts, fmt.Sprintf("%.0f m %s it", max(*o.Higher, -*o.Higher), side))
	}
	if len(parts) == 0 {
		return "origin not stated"
	}
	return strings.Join(parts, ", ")
}

// How far and how high a station may be before its weather is doubted for the
// slab. Chosen by the project, not from a standard.
const (
	farStation  = 10e3 // m
	highStation = 100  // m
)

// lapse is how much colder the standard atmosphere is with height, K/m.
const lapse = 0.0065

// Cautions says what a reader should bear in mind about a record for the slab.
func (o Origin) Cautions() []string {
	var notes []string
	switch o.Kind {
	case Forecast:
		notes = append(notes, "The weather is a forecast, not a measurement.")
	case Made:
		notes = append(notes, "The weather was made from the least and greatest temperature of the day; it knows no front or shower.")
	case Typical:
		notes = append(notes, "The weather is that of a typical year, not of these days.")
	case Station:
		if o.Distance == nil {
			notes = append(notes, "How far the station is from the slab was not stated.")
		}
	}
	if o.Distance != nil && *o.Distance > farStation {
		notes = append(notes, fmt.Sprintf("The station is %.0f km away: wind, cloud and showers may have been others at the slab.", *o.Distance/1000))
	}
	if o.Higher != nil && math.Abs(*o.Higher) > highStation {
		side := "warmer"
		if *o.Higher < 0 {
			side = "colder"
		}
		notes = append(notes, fmt.Sprintf("By height alone the slab is about %.1f K %s than the station.", math.Abs(*o.Higher)*lapse, side))
	}
	return notes
}
