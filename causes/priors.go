package causes

import "fmt"

// Prior is the chance of a cause before anything of the finding is known.
type Prior struct {
	Cause string  `json:"cause"`
	Name  string  `json:"name"`
	Odds  float64 `json:"odds"`
	Share float64 `json:"share"`
	Basis string  `json:"basis"` // where the odds come from
}

const (
	// enoughCases is how many closed cases of one's own count more than the bands of
	// the table: our own judgement.
	enoughCases = 30
	// tableWeight is how many cases the table is worth beside a tally, so that a cause
	// never met yet is not impossible: our own judgement.
	tableWeight = 10.0
)

// Priors returns the prior odds used at a place: those of the table for the
// exposure, with frost damage counting little where nothing freezes; or, from 30
// closed cases on, the practice's own tally (cause to number of cases) with the
// table counting as ten cases.
func Priors(exposure string, frost bool, tally map[string]int) []Prior {
	if exposure != Indoor {
		exposure = External
	}
	table, sum, cases := make([]float64, len(catalogue)), 0.0, 0
	for h, c := range catalogue {
		table[h] = c.odds[exposure]
		if !frost && (c.ID == "frost-scaling" || c.ID == "frost-aggregate") {
			table[h] *= withoutFrost
		}
		sum += table[h]
		cases += max(0, tally[c.ID])
	}
	basis := "slabwright's own judgement, " + exposure
	own := cases >= enoughCases
	if own {
		basis = fmt.Sprintf("own tally of %d closed cases, the table counting as %.0f", cases, tableWeight)
	}
	all := make([]Prior, len(catalogue))
	for h, c := range catalogue {
		all[h] = Prior{c.ID, c.Name, table[h], table[h] / sum, basis}
		if own {
			all[h].Odds = float64(max(0, tally[c.ID])) + tableWeight*table[h]/sum
			all[h].Share = all[h].Odds / (float64(cases) + tableWeight)
		}
	}
	return all
}

// priorShares are the prior chances of a finding in the order of the catalogue.
func priorShares(e Evidence) []float64 {
	shares := make([]float64, len(catalogue))
	for h, p := range Priors(e.Exposure, e.Frost, e.Tally) {
		shares[h] = p.Share
	}
	return shares
}
