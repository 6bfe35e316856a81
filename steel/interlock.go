package steel

import (
	_ "embed"

	"slabwright/internal/table"
)

//go:embed interlock.csv
var interlockCSV string

var interlock = table.Read("interlock.csv", interlockCSV)

func interlockValue(what string) float64 { return interlock.Number(interlock.Find(what), "value") }

// InterlockUsableOpening returns the opening, mm, up to which the stones of the two
// faces still carry wheels across a crack or an undowelled joint. Wider cracks under
// heavy wheels want filling or dowels. It depends on stone, load and repetitions.
//
// Source: Colley and Humphrey 1967, as quoted on a contractor's page; seen.
func InterlockUsableOpening() float64 { return interlockValue("usable opening") }

// InterlockDesignTransfer returns the share of a load that interlock carries across a
// joint for design, and the opening in mm it is meant for.
//
// Source: as [InterlockUsableOpening].
func InterlockDesignTransfer() (share, opening float64) {
	return interlockValue("transfer at that opening"), interlockValue("opening of the design transfer")
}

// TransferCriterion returns the least load transfer efficiency by deflection for a
// sound joint by "AASHTO", "fair" or "lenient" practice; ok is false for another word.
//
// Source: FHWA-HRT-06-106 citing 0.75 and 0.60, seen; 0.70 from memory.
func TransferCriterion(practice string) (efficiency float64, ok bool) {
	i := interlock.Find("efficiency " + practice)
	if i < 0 {
		return 0, false
	}
	return interlock.Number(i, "value"), true
}
