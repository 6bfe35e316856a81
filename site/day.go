package site

import "slabwright/source"

// Day is what was agreed about the day of the pour before it came.
type Day struct {
	Duties []Duty  `json:"duties,omitempty"`
	Ready  []Ready `json:"ready,omitempty"`
	Risk   string  `json:"weather_risk,omitempty"` // who carries the risk of the weather
}

// Duty is one thing done on the day, by one person.
type Duty struct {
	What string `json:"duty"`           // decide, load, water, plant, record, tests, steel, weather, cure, saw, spare, first; or words of one's own
	Name string `json:"name,omitempty"` // of the person; absent: nobody yet
	Ring string `json:"ring,omitempty"` // number or channel
}

// Ready is one thing or person that has to be there.
type Ready struct {
	What string         `json:"what"`
	Who  string         `json:"who,omitempty"`
	Here *source.Choice `json:"here,omitempty"` // yes, no
}
