package remedies

import "math"

// Pitches of bars across a joint or crack; common practice and 500-750 mm of the
// cross-stitching notes.
const (
	dowelPitch  = 0.300 // m
	stitchPitch = 0.600 // m
)

// quantity returns how much of a remedy the finding takes, whether it fits or not,
// so that its cost can be set beside the others; nil where nobody knows.
func quantity(id, unit string, in Situation) *float64 {
	switch id {
	case "release":
		return in.FixtureLength
	case "cut-missed-joints":
		return in.UncutLength
	case "restore-dowels":
		return bars(in.Length, dowelPitch)
	case "stitch":
		return bars(in.Length, stitchPitch)
	case "replace":
		return in.PanelArea
	case "replace-all":
		return in.SlabArea
	}
	switch unit {
	case "m":
		return in.Length
	case "m²":
		return in.Area
	}
	return nil
}

// bars returns how many bars a line takes at a pitch, one at each end.
func bars(length *float64, pitch float64) *float64 {
	if length == nil {
		return nil
	}
	n := math.Floor(*length/pitch+slack) + 1
	return &n
}
