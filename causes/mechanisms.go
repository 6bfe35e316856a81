package causes

import "slabwright/source"

// Mechanism is what pulls a slab apart.
type Mechanism struct {
	ID      string            `json:"id"`
	Name    string            `json:"name"`
	Plain   string            `json:"plain"`
	Exact   string            `json:"exact"`
	Sources []source.Citation `json:"sources"`
}

var (
	mechanisms     = readMechanisms()
	mechanismByAge = readMechanismByAge()
)

func readMechanisms() []Mechanism {
	var all []Mechanism
	for _, r := range readTable("mechanisms.csv") {
		all = append(all, Mechanism{r["id"], r["name"], r["plain"], r["exact"], r.citations()})
	}
	return all
}

func readMechanismByAge() map[string]map[string]float64 {
	all := map[string]map[string]float64{}
	for _, r := range readTable("mechanism_by_age.csv") {
		all[r["age"]] = readShares(r["shares"])
	}
	return all
}

// ageShares returns which mechanisms drive a trigger cause, from the age when the
// crack was first seen: thermal below 72 h, drying after about three weeks, both
// between; the season shares in from the first winter on.
func ageShares(e Evidence) map[string]float64 {
	shares, total := map[string]float64{}, 0.0
	v := FindVariable("age")
	for _, o := range e.Observations {
		if o.Variable != "age" || o.fault(*v) != "" {
			continue
		}
		given := o.shares()
		for _, state := range v.States {
			row := mechanismByAge[state]
			if state == "1-12mo" && e.Recorded[SeenInFirstWinter] {
				row = mechanismByAge["first-winter"]
			}
			for _, m := range mechanisms {
				shares[m.ID] += given[state] * row[m.ID]
			}
			total += given[state]
		}
	}
	if total == 0 {
		return mechanismByAge["unknown"]
	}
	for id := range shares {
		shares[id] /= total
	}
	return shares
}

// mechanismShare returns the share of a cause that is driven by a mechanism.
func (w *weighing) mechanismShare(c Cause, mechanism string) float64 {
	if c.Shares == nil {
		return w.ageShares[mechanism]
	}
	return c.Shares[mechanism]
}

// mechanismChance returns the chance of a mechanism under a belief in the causes.
func (w *weighing) mechanismChance(belief []float64, mechanism string) float64 {
	p := 0.0
	for h, c := range catalogue {
		p += belief[h] * w.mechanismShare(c, mechanism)
	}
	return p
}
