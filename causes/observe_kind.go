package causes

import "slabwright/source"

var kinds = readKinds()

func readKinds() map[string]string {
	all := map[string]string{}
	for _, r := range readTable("kinds.csv") {
		all[r["kind"]] = r["pattern"]
	}
	return all
}

// mapCellLimit parts a fine net from a coarse map: our own judgement between the
// 40 mm of crazing and the coarse cells of reactions.
const mapCellLimit = 0.100 // m

// FromKind returns the pattern that a kind of finding of the walk is ("crack" is a
// line), or nil when the kind says nothing of the pattern. Map cracking is fine
// or coarse by its cells; without them it is left open between the two.
func FromKind(kind string, cell *source.Fact) *Observation {
	o := Observation{Variable: "pattern", State: kinds[kind], From: "seen", Known: source.Recorded}
	if kind == "map cracking" {
		switch {
		case cell == nil:
			o.State, o.Weights = "finemap", map[string]float64{"finemap": 1, "coarsemap": 1}
			o.Text = "it is a map of cells whose size was not measured"
			return &o
		case cell.Value < mapCellLimit:
			o.State = "finemap"
		default:
			o.State = "coarsemap"
		}
	}
	if o.State == "" {
		return nil
	}
	o.Text = Says("pattern", o.State)
	return &o
}
