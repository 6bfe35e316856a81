package earlyage

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"strconv"
)

// Cover is something laid or sprayed on the slab between two clock times.
type Cover struct {
	Key          string
	Name         string
	On, Off      float64 // hours after placing; Off of 0 stays
	Resistance   float64 // to heat, m2K/W
	Absorptivity float64 // of its outer face to the sun, 0 to 1
	Emissivity   float64 // of its outer face
	Evaporation  float64 // share of the open drying rate that remains, 0 to 1
	KeptWet      bool    // water is added: it evaporates, but not from the concrete
}

//go:embed covers.csv
var coverTable []byte

// TypicalCover returns a cover of the table by key: "plastic", "hessian-wet",
// "compound", "blanket" ...; ok is false for an unknown key.
func TypicalCover(key string) (c Cover, ok bool) {
	for _, row := range readTable(coverTable) {
		if row["key"] == key {
			return Cover{Key: key, Name: row["name"], Resistance: number(row["resistance_m2K_W"]),
				Absorptivity: number(row["absorptivity"]), Emissivity: number(row["emissivity"]),
				Evaporation: number(row["evaporation_share"]), KeptWet: row["kept_wet"] == "yes"}, true
		}
	}
	return Cover{}, false
}

// bare is the open surface of concrete.
func bare(absorptivity, emissivity float64) Cover {
	return Cover{Key: "none", Name: "open", Absorptivity: absorptivity, Emissivity: emissivity, Evaporation: 1}
}

// lies reports whether the cover is on the slab at a time.
func (c Cover) lies(hours float64) bool {
	return hours >= c.On && (c.Off == 0 || hours < c.Off)
}

// readTable reads an embedded table with a head row, each row by column name.
func readTable(text []byte) []map[string]string {
	r := csv.NewReader(bytes.NewReader(text))
	r.Comment = '#'
	records, err := r.ReadAll()
	if err != nil {
		panic("earlyage: embedded table: " + err.Error())
	}
	var rows []map[string]string
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, name := range records[0] {
			row[name] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func number(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("earlyage: embedded table: " + err.Error())
	}
	return v
}
