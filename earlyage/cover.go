package earlyage

import (
	_ "embed"
	"fmt"
	"strconv"
	"time"

	"slabwright/internal/table"
)

// Cover is something laid or sprayed on the slab, or set up over it, between two
// clock times.
type Cover struct {
	Key          string
	Name         string
	On, Off      float64 // hours after placing; Off of 0 stays
	Resistance   float64 // to heat, m2K/W
	Absorptivity float64 // of its outer face to the sun, 0 to 1
	Emissivity   float64 // of its outer face
	Evaporation  float64 // share of the open drying rate that remains, 0 to 1
	KeptWet      bool    // water is added: it evaporates, but not from the concrete
	WindKept     float64 // share of the wind kept off the surface, 0 to 1
	SunKept      float64 // share of the sun kept off, 0 to 1
	Stands       bool    // beside or over the slab, together with what lies on it
	Known        string  // how its values are known
}

//go:embed covers.csv
var coverTable string

var coverRows = table.Read("covers.csv", coverTable).Records()

// TypicalCover returns a cover of the table by key: "plastic", "hessian-wet",
// "compound", "blanket", "windbreak", "fog" ...; ok is false for an unknown key.
func TypicalCover(key string) (c Cover, ok bool) {
	for _, row := range coverRows {
		if row["key"] == key {
			return Cover{Key: key, Name: row["name"], Resistance: number(row["resistance_m2K_W"]),
				Absorptivity: number(row["absorptivity"]), Emissivity: number(row["emissivity"]),
				Evaporation: number(row["evaporation_share"]), KeptWet: row["kept_wet"] == "yes",
				WindKept: number(row["wind_kept"]), SunKept: number(row["sun_kept"]),
				Stands: row["stands"] == "yes", Known: row["known"]}, true
		}
	}
	return Cover{}, false
}

// Covers returns the keys of the table in its order.
func Covers() []string {
	var keys []string
	for _, row := range coverRows {
		keys = append(keys, row["key"])
	}
	return keys
}

// By returns the cover with the clock times at which it goes on and comes off a
// slab placed at an instant; a zero time off leaves it. What was set up before
// placing acts from placing on.
func (c Cover) By(placed, on, off time.Time) (Cover, error) {
	const clock = "2 Jan 15:04 MST"
	if on.IsZero() {
		return Cover{}, fmt.Errorf("%s has no time at which it went on: give the clock time, or leave it out", c.Name)
	}
	if !off.IsZero() && !off.After(on) {
		return Cover{}, fmt.Errorf("%s comes off at %s, not after it went on at %s: is the date of one of them wrong?", c.Name, off.Format(clock), on.Format(clock))
	}
	if !off.IsZero() && !off.After(placed) {
		return Cover{}, fmt.Errorf("%s comes off at %s, before placing at %s: it never covers this slab", c.Name, off.Format(clock), placed.Format(clock))
	}
	if !c.Stands && on.Before(placed) {
		return Cover{}, fmt.Errorf("%s goes on at %s, before placing at %s: only what stands beside or over the slab can be there before it", c.Name, on.Format(clock), placed.Format(clock))
	}
	c.On, c.Off = max(0, on.Sub(placed).Hours()), 0
	if !off.IsZero() {
		c.Off = off.Sub(placed).Hours()
	}
	return c, nil
}

// with returns the cover as it acts together with one that stands over it.
func (c Cover) with(over Cover) Cover {
	c.Evaporation *= over.Evaporation
	c.KeptWet = c.KeptWet || over.KeptWet
	c.WindKept = 1 - (1-c.WindKept)*(1-over.WindKept)
	c.SunKept = 1 - (1-c.SunKept)*(1-over.SunKept)
	return c
}

// bare is the open surface of concrete.
func bare(absorptivity, emissivity float64) Cover {
	return Cover{Key: "none", Name: "open", Absorptivity: absorptivity, Emissivity: emissivity, Evaporation: 1}
}

// lies reports whether the cover is on the slab at a time.
func (c Cover) lies(hours float64) bool {
	return hours >= c.On && (c.Off == 0 || hours < c.Off)
}

func number(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("earlyage: embedded table: " + err.Error())
	}
	return v
}
