package job

import (
	_ "embed"
	"fmt"
	"strconv"
	"strings"

	"slabwright/internal/table"
	"slabwright/source"
	"slabwright/unit"
)

//go:embed ranges.csv
var rangesCSV string

//go:embed choices.csv
var choicesCSV string

//go:embed needs.csv
var needsCSV string

// Range is the allowed and the usual range of one number of a job.
type Range struct {
	Field              string        // pattern: "slabs[].thickness_m"
	Quantity           unit.Quantity // what it measures
	Unit               string        // of the field; empty for a bare number
	Min, Max           float64
	UsualMin, UsualMax float64
	TypedAs            []string // what it may have been typed as
	Label, Why         string
	Source             source.Citation
}

// Choices are the words one field may hold.
type Choices struct {
	Field string
	Words []string
	Open  bool // other words are kept without complaint
	Label string
}

// Need is what is not answered while a fact is not known.
type Need struct {
	Field  string
	Rank   int    // 1 the model cannot run, 2 answers are missing, 3 answers are wider
	When   string // "kind=sawn": only where the fact's parent is so
	Label  string
	Blocks []string
	Ask    string // how it is found out
}

var (
	ranges, rangeOrder = readRanges()
	choices            = readChoices()
	needs              = readNeeds()
)

// Ranges returns the table of allowed ranges, in its order.
func Ranges() []Range {
	all := make([]Range, len(rangeOrder))
	for i, f := range rangeOrder {
		all[i] = ranges[f]
	}
	return all
}

// Needs returns the table of what each unknown fact blocks, in its order.
func Needs() []Need { return append([]Need(nil), needs...) }

func readRanges() (map[string]Range, []string) {
	byField, order := map[string]Range{}, []string(nil)
	for _, row := range table.Read("ranges.csv", rangesCSV).Rows {
		num := func(i, or int) float64 {
			if row[i] == "" {
				i = or
			}
			v, err := strconv.ParseFloat(row[i], 64)
			if err != nil {
				panic(fmt.Sprintf("job: ranges.csv: %s: %v", row[0], err))
			}
			return v
		}
		r := Range{Field: row[0], Quantity: unit.Quantity(row[1]), Unit: row[2], Min: num(3, 3), Max: num(4, 4),
			UsualMin: num(5, 3), UsualMax: num(6, 4), Label: row[8], Why: row[9], Source: source.Cite(row[10], "")}
		if row[7] != "" {
			r.TypedAs = strings.Split(row[7], "|")
		}
		if _, twice := byField[r.Field]; twice || !(r.Min <= r.UsualMin && r.UsualMin < r.UsualMax && r.UsualMax <= r.Max) {
			panic("job: ranges.csv: " + r.Field + " stands twice or its ranges are out of order")
		}
		byField[r.Field], order = r, append(order, r.Field)
	}
	return byField, order
}

func readChoices() map[string]Choices {
	byField := map[string]Choices{}
	for _, row := range table.Read("choices.csv", choicesCSV).Rows {
		byField[row[0]] = Choices{Field: row[0], Words: strings.Split(row[1], "|"), Open: row[2] == "open", Label: row[3]}
	}
	return byField
}

func readNeeds() []Need {
	var all []Need
	for _, row := range table.Read("needs.csv", needsCSV).Rows {
		rank, err := strconv.Atoi(row[1])
		if err != nil {
			panic("job: needs.csv: " + row[0] + ": " + err.Error())
		}
		all = append(all, Need{Field: row[0], Rank: rank, When: row[2], Label: row[3], Blocks: strings.Split(row[4], "|"), Ask: row[5]})
	}
	return all
}
