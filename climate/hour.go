package climate

import (
	"encoding/json"
	"math"
	"time"
)

// Hour is the weather at one instant. Air, humidity, wind, cloud and sky are what
// holds at Time. Sun and rain are means over the span before Time when the series
// says so (see [Series.MeanOver]), as weather files give them.
//
// NaN is not known; a literal that leaves Sun or Cloud out says 0, which is a dark
// and clear sky, so build records with [NewHour].
type Hour struct {
	Time     time.Time // UTC instant
	Air      float64   // °C
	Humidity float64   // 0..1
	Wind     float64   // m/s at the series' wind height
	Cloud    float64   // share of the sky covered 0..1
	Sun      float64   // on level ground, W/m2
	Sky      float64   // heat radiated down by the sky, W/m2; 0 counts as not known
	Rain     float64   // mm/h
}

// NewHour returns an hour of which only air, humidity and wind are known.
func NewHour(t time.Time, air, humidity, wind float64) Hour {
	unknown := math.NaN()
	return Hour{Time: t.UTC(), Air: air, Humidity: humidity, Wind: wind,
		Cloud: unknown, Sun: unknown, Sky: unknown, Rain: unknown}
}

// storedHour is an hour as kept in a file: what is not known is absent.
type storedHour struct {
	Time     time.Time `json:"time"`
	Air      *float64  `json:"air_C,omitempty"`
	Humidity *float64  `json:"humidity,omitempty"`
	Wind     *float64  `json:"wind_m_s,omitempty"`
	Cloud    *float64  `json:"cloud,omitempty"`
	Sun      *float64  `json:"sun_W_m2,omitempty"`
	Sky      *float64  `json:"sky_W_m2,omitempty"`
	Rain     *float64  `json:"rain_mm_h,omitempty"`
}

// MarshalJSON writes the hour with what is not known left out.
func (h Hour) MarshalJSON() ([]byte, error) {
	return json.Marshal(storedHour{h.Time, present(h.Air), present(h.Humidity), present(h.Wind),
		present(h.Cloud), present(h.Sun), present(h.Sky), present(h.Rain)})
}

// UnmarshalJSON reads the hour; what is absent is NaN.
func (h *Hour) UnmarshalJSON(data []byte) error {
	var s storedHour
	if err := json.Unmarshal(data, &s); err != nil {
		return err
	}
	*h = Hour{s.Time, orUnknown(s.Air), orUnknown(s.Humidity), orUnknown(s.Wind),
		orUnknown(s.Cloud), orUnknown(s.Sun), orUnknown(s.Sky), orUnknown(s.Rain)}
	return nil
}

func present(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}

func orUnknown(v *float64) float64 {
	if v == nil {
		return math.NaN()
	}
	return *v
}

// quantity is one measured column of an [Hour].
type quantity struct {
	name     string // word used in messages
	unit     string
	get      func(*Hour) *float64
	needed   bool    // an hour without it cannot drive the slab
	mean     bool    // a mean over the span before the stamp
	low      float64 // what is possible on a building site
	high     float64
	unlikely float64 // above this a person should look again
}

var quantitiesOfHour = []quantity{
	{"air temperature", "°C", func(h *Hour) *float64 { return &h.Air }, true, false, -60, 60, 50},
	{"humidity", "", func(h *Hour) *float64 { return &h.Humidity }, true, false, 0, 1.05, 1.05},
	{"wind", "m/s", func(h *Hour) *float64 { return &h.Wind }, true, false, 0, 113, 30},
	{"cloud", "", func(h *Hour) *float64 { return &h.Cloud }, false, false, 0, 1, 1},
	{"sun", "W/m²", func(h *Hour) *float64 { return &h.Sun }, false, true, -10, 1800, 1300},
	{"sky radiation", "W/m²", func(h *Hour) *float64 { return &h.Sky }, false, false, 0, 700, 550},
	{"rain", "mm/h", func(h *Hour) *float64 { return &h.Rain }, false, true, 0, 500, 100},
}
