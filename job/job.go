package job

import (
	"slabwright/plan"
	"slabwright/site"
	"slabwright/source"
	"slabwright/walk"
)

// Version is the schema version this program writes and the newest it reads.
const Version = 1

// Job is one commission, as it stands in job.json. Lengths in metres, times in
// UTC with the site's zone beside; a fact that nobody knows is absent.
type Job struct {
	Version    int              `json:"version"`
	ID         string           `json:"id"`
	Number     string           `json:"number,omitempty"`
	Title      string           `json:"title"`
	Client     string           `json:"client,omitempty"`
	Author     string           `json:"author,omitempty"`
	Revision   string           `json:"revision,omitempty"` // absent: DRAFT
	Question   string           `json:"question,omitempty"` // what the client asked
	Place      site.Place       `json:"place"`
	Parties    []site.Party     `json:"parties,omitempty"`
	Slabs      []plan.Slab      `json:"slabs"`
	Mixes      []site.Mix       `json:"mixes,omitempty"`
	Ground     site.Ground      `json:"ground"`
	Planned    site.Planned     `json:"planned"`
	Wheel      site.Wheel       `json:"wheel"`
	Loads      []site.Load      `json:"loads,omitempty"` // that stand and drive on it, for the checks
	Use        *site.Use        `json:"use,omitempty"`
	Day        *site.Day        `json:"pour_day,omitempty"` // agreed beforehand: who does what, what has to be there
	Pours      []site.Pour      `json:"pours,omitempty"`
	Walks      []walk.Walk      `json:"walks,omitempty"`
	Departures []site.Departure `json:"departures,omitempty"` // that reach the whole slab: drawings, steel, isolation
	Overrides  []Override       `json:"overrides,omitempty"`  // chances set by the engineer, with the reason
	Rates      []Rate           `json:"rates,omitempty"`
	Basis      Basis            `json:"basis"`
	Limits     Limits           `json:"limits"`

	tree     *node     // the text it was read from; nil for a job made here
	dir      string    // the folder it was read from
	warnings []Problem // noticed while reading
}

// Rate is what a remedy costs in the user's own books.
type Rate struct {
	Remedy   string  `json:"remedy"`
	Per      string  `json:"per"` // m, m2, item, visit
	Cost     float64 `json:"cost"`
	Currency string  `json:"currency"`
}

// Basis is what the calculation stands on.
type Basis struct {
	Code      string       `json:"code,omitempty"`         // EN 1992-1-1, MC2010, ACI, AS 3600; absent: EN 1992-1-1
	Risk      *source.Fact `json:"risk,omitempty"`         // chance of cracking at which the cut window closes, 0-1
	EdgeWet   *source.Fact `json:"edge_wet_MPa,omitempty"` // strength for a clean edge
	EdgeEarly *source.Fact `json:"edge_early_MPa,omitempty"`
	Seed      uint64       `json:"seed,omitempty"`
	Members   int          `json:"members,omitempty"`
	Units     string       `json:"units,omitempty"` // metric, US
}

// Limits is what the report does not cover and who may rely on it.
type Limits struct {
	NotDone  string `json:"not_done,omitempty"`
	Reliance string `json:"reliance,omitempty"`
}
