package remedies

import (
	"embed"
	"strconv"
	"strings"

	"slabwright/internal/table"
	"slabwright/source"
)

//go:embed tables
var tables embed.FS

// Remedy is one row of the table of remedies.
type Remedy struct {
	ID         string            `json:"id"`
	Name       string            `json:"name"`
	Order      int               `json:"order"` // what must come first is small
	Unit       string            `json:"unit,omitempty"`
	Kinds      []string          `json:"kinds"`
	Plain      string            `json:"plain"`
	Exact      string            `json:"exact"`
	Life       string            `json:"life"`
	Disruption string            `json:"disruption"`
	Sources    []source.Citation `json:"sources"`
}

// Caution is a line that a report carries.
type Caution struct {
	ID      string            `json:"id"`
	When    string            `json:"when"`
	Text    string            `json:"text"`
	Sources []source.Citation `json:"sources"`
}

// Filler is how much movement a kind of filler takes.
type Filler struct {
	ID    string  `json:"id"`
	Share float64 `json:"share"` // of its width when placed
	Note  string  `json:"note"`
}

var (
	catalogue = readRemedies()
	cautions  = readCautions()
	fillers   = readFillers()
)

func read(name string) [][]string {
	text, err := tables.ReadFile("tables/" + name)
	if err != nil {
		panic("remedies: " + err.Error())
	}
	return table.Read(name, string(text)).Rows
}

func cite(keys string) []source.Citation {
	var all []source.Citation
	for _, key := range strings.Split(keys, ";") {
		all = append(all, source.Cite(key, ""))
	}
	return all
}

func readRemedies() []Remedy {
	var all []Remedy
	for _, r := range read("remedies.csv") {
		order, err := strconv.Atoi(r[2])
		if err != nil {
			panic("remedies: remedies.csv: order of " + r[0])
		}
		all = append(all, Remedy{r[0], r[1], order, r[3], strings.Split(r[4], ";"), r[5], r[6], r[7], r[8], cite(r[9])})
	}
	return all
}

func readCautions() []Caution {
	var all []Caution
	for _, r := range read("cautions.csv") {
		all = append(all, Caution{r[0], r[1], r[2], cite(r[3])})
	}
	return all
}

func readFillers() map[string]Filler {
	all := map[string]Filler{}
	for _, r := range read("fillers.csv") {
		share, err := strconv.ParseFloat(r[1], 64)
		if err != nil {
			panic("remedies: fillers.csv: share of " + r[0])
		}
		all[r[0]] = Filler{r[0], share, r[2]}
	}
	return all
}

// Catalogue returns every remedy of the table, what comes first first.
func Catalogue() []Remedy { return append([]Remedy(nil), catalogue...) }

// Cautions returns what every report must carry.
func Cautions() []Caution { return append([]Caution(nil), cautions...) }
