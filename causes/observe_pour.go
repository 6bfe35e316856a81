package causes

import (
	"fmt"

	"slabwright/source"
	"slabwright/working"
)

// PourFacts are what the record of the pour, the weather and the models say of
// the place of a finding. Times in hours after placing; nil is not known.
type PourFacts struct {
	PeakEvaporation          *source.Fact   `json:"peak_evaporation_kg_m2_s,omitempty"` // in the first 6 h, kg/m²·s
	TemperatureDrop72h       *source.Fact   `json:"temperature_drop_72h_K,omitempty"`
	SawnAfterHours           *source.Fact   `json:"sawn_after_h,omitempty"`
	WindowOpensHours         *float64       `json:"window_opens_h,omitempty"` // of the cut window, by the model
	WindowClosesHours        *float64       `json:"window_closes_h,omitempty"`
	MeanAirTemperature       *float64       `json:"mean_air_C,omitempty"` // until sawing; used without a window
	NotSawn                  *source.Choice `json:"not_sawn,omitempty"`   // yes or no
	CrackBeforeSawing        *source.Choice `json:"crack_before_sawing,omitempty"`
	EdgesRavelled            *source.Choice `json:"edges_ravelled,omitempty"`
	EarlyEntry               *source.Choice `json:"early_entry,omitempty"` // the saw used
	GrooveDepth              *source.Fact   `json:"groove_depth_m,omitempty"`
	Thickness                *source.Fact   `json:"thickness_m,omitempty"`
	Exposure                 *source.Choice `json:"exposure,omitempty"` // a state of exposure
	Ground                   *source.Choice `json:"ground,omitempty"`   // a state of ground
	Dowels                   *source.Choice `json:"dowels,omitempty"`   // a state of dowels
	DowelSkew                *source.Fact   `json:"dowel_skew,omitempty"`
	DowelsBothWaysWithin     *source.Fact   `json:"dowels_both_ways_within_m,omitempty"`
	LoadOverCapacity         *source.Fact   `json:"load_over_capacity,omitempty"`
	TraffickedBeforeStrength *source.Choice `json:"trafficked_before_strength,omitempty"`

	WeatherWorking string `json:"weather_working,omitempty"` // sheets behind the figures
	WindowWorking  string `json:"window_working,omitempty"`
	LoadWorking    string `json:"load_working,omitempty"`
}

// Limits of the pour's record. Saw times without a model are the quoted rule of
// ACI 302.1R and trade questions; the early-entry exception is from tests quoted
// there; the skew is a rule of road practice, from memory.
const (
	lateWarmHours      = 18.0 // hours after placing, above warmMean
	lateCoolHours      = 24.0
	warmMean           = 15.0 // °C
	earlyEntryHours    = 3.0
	earlyEntryDepth    = 0.025 // m
	dowelSkewLimit     = 1.0 / 50
	dowelBothWaysLimit = 0.300 // m
	negligibleLoad     = 0.3   // of capacity
)

// FromPour turns the record of the pour into observations. All faults found are
// returned together with the observations that could be made.
func FromPour(f PourFacts) ([]Observation, []error) {
	c := &collector{from: "weather"}
	c.measure("evaporation", f.PeakEvaporation, f.WeatherWorking)
	c.measure("temperature_drop", f.TemperatureDrop72h, f.WeatherWorking)
	c.from = "pour"
	c.take(f.sawing())
	c.take(f.groove())
	c.choose("exposure", f.Exposure)
	c.choose("ground", f.Ground)
	c.take(f.dowels())
	c.take(f.load())
	return c.all, c.faults
}

// sawing judges the time of the cut: by what was seen at the saw, else by the
// model's window, else by the rule of thumb.
func (f PourFacts) sawing() *Observation {
	switch {
	case f.NotSawn.Is("yes"):
		return pourObservation("sawing", "not-sawn", "no joint was sawn here", f.NotSawn.Known, "")
	case f.CrackBeforeSawing.Is("yes"):
		return pourObservation("sawing", "late", "the crack was there before the saw", f.CrackBeforeSawing.Known, "")
	case f.EdgesRavelled.Is("yes"):
		return pourObservation("sawing", "early-ravelled", "the saw tore the edges of the groove", f.EdgesRavelled.Known, "")
	case f.SawnAfterHours == nil:
		return nil
	}
	hours := f.SawnAfterHours.Value
	text := fmt.Sprintf("it was sawn %s h after placing", working.Figure(hours, 2))
	if f.WindowClosesHours != nil {
		return f.sawingByWindow(hours, text)
	}
	limit, rule := lateCoolHours, "24 h, the rule of thumb in cool weather"
	switch {
	case f.MeanAirTemperature == nil && hours > lateWarmHours && hours <= lateCoolHours:
		return nil // late when warm, in time when cool, and nobody knows which
	case f.MeanAirTemperature != nil && *f.MeanAirTemperature > warmMean:
		limit, rule = lateWarmHours, "18 h, the rule of thumb above 15 °C"
	}
	if hours > limit {
		return pourObservation("sawing", "late", text+", later than "+rule, f.SawnAfterHours.Known, "")
	}
	return pourObservation("sawing", "in-window", text+", within "+rule, f.SawnAfterHours.Known, "")
}

func (f PourFacts) sawingByWindow(hours float64, text string) *Observation {
	closes := *f.WindowClosesHours
	switch {
	case hours > closes:
		text += fmt.Sprintf(", %s h after the cut window closed", working.Figure(hours-closes, 2))
		return pourObservation("sawing", "late", text, f.SawnAfterHours.Known, f.WindowWorking)
	case f.WindowOpensHours != nil && hours < *f.WindowOpensHours:
		text += fmt.Sprintf(", %s h before the cut window opened", working.Figure(*f.WindowOpensHours-hours, 2))
		return pourObservation("sawing", "early-ravelled", text, source.Assumed, f.WindowWorking)
	}
	text += fmt.Sprintf(", %s h before the cut window closed", working.Figure(closes-hours, 2))
	return pourObservation("sawing", "in-window", text, f.SawnAfterHours.Known, f.WindowWorking)
}

// groove judges the depth of the cut. An early-entry cut of 25 mm made within 3 h
// counts as deep enough.
func (f PourFacts) groove() *Observation {
	if f.GrooveDepth == nil {
		return nil
	}
	depth := f.GrooveDepth.Value
	early := f.EarlyEntry.Is("yes") && f.SawnAfterHours != nil && f.SawnAfterHours.Value <= earlyEntryHours && depth >= earlyEntryDepth-slack
	if early {
		return pourObservation("groove", "from-0.25", fmt.Sprintf("an early-entry saw cut %s deep within %s h, which tests found enough", length(depth), working.Figure(f.SawnAfterHours.Value, 2)), f.GrooveDepth.Known, "")
	}
	if f.Thickness == nil || f.Thickness.Value <= 0 {
		return nil
	}
	state, err := StateOf("groove", depth/f.Thickness.Value)
	if err != nil {
		return nil
	}
	text := fmt.Sprintf("the groove is %s deep, %.2f of the %s thickness", length(depth), depth/f.Thickness.Value, length(f.Thickness.Value))
	return pourObservation("groove", state, text, weaker(f.GrooveDepth.Known, f.Thickness.Known), "")
}

func (f PourFacts) dowels() *Observation {
	switch {
	case f.DowelSkew != nil && f.DowelSkew.Value > dowelSkewLimit:
		return pourObservation("dowels", "misaligned-or-two-way", fmt.Sprintf("bars at the joint are skewed by 1 in %s", working.Figure(1/f.DowelSkew.Value, 2)), f.DowelSkew.Known, "")
	case f.DowelsBothWaysWithin != nil && f.DowelsBothWaysWithin.Value <= dowelBothWaysLimit:
		return pourObservation("dowels", "misaligned-or-two-way", fmt.Sprintf("bars of both directions lie within %s of each other at the crossing", length(f.DowelsBothWaysWithin.Value)), f.DowelsBothWaysWithin.Known, "")
	case f.Dowels == nil:
		return nil
	}
	return pourObservation("dowels", f.Dowels.Value, Says("dowels", f.Dowels.Value), f.Dowels.Known, "")
}

func (f PourFacts) load() *Observation {
	switch {
	case f.TraffickedBeforeStrength.Is("yes"):
		return pourObservation("load", "exceeded", "it was driven on before it had its strength", f.TraffickedBeforeStrength.Known, "")
	case f.LoadOverCapacity == nil:
		return nil
	}
	ratio := f.LoadOverCapacity.Value
	text := fmt.Sprintf("the load is %s of what the slab carries", working.Figure(ratio, 2))
	state := "within"
	switch {
	case ratio > 1:
		state = "exceeded"
	case ratio < negligibleLoad:
		state = "negligible"
	}
	return pourObservation("load", state, text, f.LoadOverCapacity.Known, f.LoadWorking)
}

func pourObservation(variable, state, text string, known source.Known, workingID string) *Observation {
	return &Observation{Variable: variable, State: state, Text: text, From: "pour", Known: known, Working: workingID}
}

// weaker returns the weaker of two ways of knowing.
func weaker(a, b source.Known) source.Known {
	if knownStrength[a] <= knownStrength[b] {
		return a
	}
	return b
}
