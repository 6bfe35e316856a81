package causes

import (
	"fmt"
	"strconv"
	"strings"

	"slabwright/source"
)

// Cause is one row of the catalogue.
type Cause struct {
	ID         string             `json:"id"`
	Code       string             `json:"code"` // short alias
	Name       string             `json:"name"`
	Kind       string             `json:"kind"`                 // mechanism or trigger
	Shares     map[string]float64 `json:"mechanisms,omitempty"` // share of each mechanism; nil: follows from the age
	Layers     []string           `json:"layers"`               // all that can drive it
	Plain      string             `json:"plain"`                // for the owner, at most 30 words
	Exact      string             `json:"exact"`                // for the engineer
	Age        string             `json:"age"`
	WidthMM    string             `json:"width_mm"`
	Depth      string             `json:"depth"`
	Aggregate  string             `json:"aggregate"`
	Live       string             `json:"live"`
	Confirm    string             `json:"confirm"`
	DoNot      string             `json:"do_not"`
	Who        []string           `json:"who"` // parties, most often able to prevent it first
	Prevention []Prevention       `json:"prevention"`
	Sources    []source.Citation  `json:"sources"`

	odds map[string]float64 // by exposure
}

// Prevention is what one party could have done against a cause.
type Prevention struct {
	Party  string `json:"party"`
	Action string `json:"action"`
	Moment string `json:"moment"`
}

// Party is one of the parties of a pour.
type Party struct {
	ID   string `json:"id"`
	Name string `json:"name"`
	Does string `json:"does"`
}

// Other is the id of the hypothesis that something outside the catalogue is at work.
const Other = "other"

// Exposures of a slab, which choose the prior odds.
const (
	External = "external"
	Indoor   = "indoor"
)

// priorBand turns a band of causes.csv into prior odds. Our own judgement; a
// practice with its own tally of closed cases should put that in its place.
var priorBand = map[string]float64{"A": 8, "B": 4, "C": 2, "D": 0.7, "E": 0.15, "-": 1}

var (
	parties   = readParties()
	catalogue = readCatalogue()
	position  = indexCauses(catalogue)
)

func readParties() []Party {
	var all []Party
	for _, r := range readTable("parties.csv") {
		all = append(all, Party{r["id"], r["name"], r["does"]})
	}
	return all
}

func readCatalogue() []Cause {
	words := map[string]record{}
	for _, r := range readTable("words.csv") {
		words[r["id"]] = r
	}
	prevention := map[string][]Prevention{}
	for _, r := range readTable("prevention.csv") {
		prevention[r["cause"]] = append(prevention[r["cause"]], Prevention{r["party"], r["action"], r["moment"]})
	}
	var all []Cause
	for _, r := range readTable("causes.csv") {
		w, ok := words[r["id"]]
		if !ok {
			panic("causes: words.csv has no row " + r["id"])
		}
		all = append(all, Cause{
			ID: r["id"], Code: r["code"], Name: r["name"], Kind: r["kind"], Layers: r.list("layers"),
			Shares: readShares(r["mechanism"]), Plain: w["plain"], Exact: w["exact"], Confirm: w["confirm"], DoNot: w["do_not"],
			Age: r["age"], WidthMM: r["width_mm"], Depth: r["depth"], Aggregate: r["aggregate"], Live: r["live"],
			Who: r.list("who"), Prevention: prevention[r["id"]], Sources: r.citations(),
			odds: map[string]float64{External: priorBand[r["outdoor"]], Indoor: priorBand[r["indoor"]]},
		})
	}
	return all
}

// readShares reads "drying:0.5;load:0.5"; "by-age" is nil.
func readShares(text string) map[string]float64 {
	if text == "by-age" {
		return nil
	}
	shares := map[string]float64{}
	for _, part := range strings.Split(text, ";") {
		name, share, _ := strings.Cut(part, ":")
		v, err := strconv.ParseFloat(share, 64)
		if err != nil {
			panic(fmt.Sprintf("causes: mechanism %q: %v", text, err))
		}
		shares[name] = v
	}
	return shares
}

func indexCauses(all []Cause) map[string]int {
	at := map[string]int{}
	for i, c := range all {
		at[c.ID] = i
	}
	return at
}

// Catalogue returns every cause in the order of the table; the last is [Other].
func Catalogue() []Cause { return append([]Cause(nil), catalogue...) }

// Parties returns the parties of a pour in the order of the table.
func Parties() []Party { return append([]Party(nil), parties...) }

// Find returns the cause with this id or short code, or nil.
func Find(id string) *Cause {
	for i := range catalogue {
		if catalogue[i].ID == id || catalogue[i].Code == id {
			c := catalogue[i]
			return &c
		}
	}
	return nil
}

// PartyName returns the plain name of a party id; an unknown id is returned as it is.
func PartyName(id string) string {
	for _, p := range parties {
		if p.ID == id {
			return p.Name
		}
	}
	return id
}
