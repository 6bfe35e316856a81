package climate

import (
	"fmt"
	"math"
	"time"
)

// Doubt is a value of a record that looks wrong, with the likely mend.
type Doubt struct {
	At         time.Time
	Quantity   string
	Value      float64
	Count      int  // how many records of the series share the doubt
	Impossible bool // cannot be so; false: could be so but look again
	Text       string
	Mend       string
}

// String returns the doubt as one sentence.
func (d Doubt) String() string {
	s := fmt.Sprintf("%s: %s", stamp(d.At), d.Text)
	if d.Count > 1 {
		s += fmt.Sprintf(" (and %d more)", d.Count-1)
	}
	if d.Mend != "" {
		s += ". " + d.Mend
	}
	return s
}

// Doubtful names the values of the series that look wrong, the same doubt once
// with how often it occurs, in order of quantity and time.
func (s Series) Doubtful() []Doubt {
	var doubts []Doubt
	for _, q := range quantitiesOfHour {
		var kinds []string
		found := map[string]*Doubt{}
		for i := range s.Hours {
			h := &s.Hours[i]
			text, mend, impossible := doubtOf(q, *q.get(h))
			if text == "" {
				continue
			}
			key := fmt.Sprint(mend[:min(12, len(mend))], impossible) // the same mend, whatever value it quotes
			if d, ok := found[key]; ok {
				d.Count++
				continue
			}
			kinds = append(kinds, key)
			found[key] = &Doubt{h.Time, q.name, *q.get(h), 1, impossible, text, mend}
		}
		for _, k := range kinds {
			doubts = append(doubts, *found[k])
		}
	}
	return append(doubts, s.doubtfulOrder()...)
}

// doubtfulOrder names records out of order and a wind that never moves.
func (s Series) doubtfulOrder() []Doubt {
	var doubts []Doubt
	for i := 1; i < len(s.Hours); i++ {
		if !s.Hours[i].Time.After(s.Hours[i-1].Time) {
			doubts = append(doubts, Doubt{s.Hours[i].Time, "time", 0, 1, true,
				"this record is not later than the one before it", "Sort the records and keep one of each time."})
		}
	}
	const stuck = 12 // records in a row with one value: instruments stick, weather does not
	for _, q := range quantitiesOfHour[:2] {
		run := 1
		for i := 1; i < len(s.Hours); i++ {
			if run++; *q.get(&s.Hours[i]) != *q.get(&s.Hours[i-1]) || *q.get(&s.Hours[i]) >= 0.99 && q.name == "humidity" {
				run = 1
			}
			if run == stuck && s.Source.Kind != Made {
				doubts = append(doubts, Doubt{s.Hours[i-stuck+1].Time, q.name, *q.get(&s.Hours[i]), 1, false,
					fmt.Sprintf("%s does not change over %d records", q.name, stuck), "Look whether the instrument was stuck or the value was filled in."})
			}
		}
	}
	return doubts
}

// doubtOf judges one value; text is empty when nothing is wrong with it.
func doubtOf(q quantity, v float64) (text, mend string, impossible bool) {
	if math.IsNaN(v) || v >= q.low && v <= q.unlikely {
		return "", "", false
	}
	text = fmt.Sprintf("%s %s is outside %s", q.name, number(v, q.unit), span(q))
	impossible = !(v >= q.low && v <= q.high)
	if !impossible {
		text = fmt.Sprintf("%s %s is more than is usual (%s)", q.name, number(v, q.unit), number(q.unlikely, q.unit))
	}
	return text, mendOf(q.name, v), impossible
}

func mendOf(name string, v float64) string {
	switch {
	case v <= -900:
		return "This looks like a code for a missing value: leave the cell empty."
	case name == "humidity" && v > 1.05 && v <= 105:
		return fmt.Sprintf("Enter it as a fraction (%g), or write %g %%: it looks like percent.", v/100, v)
	case name == "humidity" && v < 0:
		return "Negative humidity is a code or a slip: leave the cell empty."
	case name == "wind" && v > 30 && v <= 150:
		return fmt.Sprintf("Is the column in km/h? Then %g is %.1f m/s: write wind_km_h in the head.", v, v*kilometrePerHour)
	case name == "wind" && v < 0:
		return "Wind has no sign: leave the cell empty or drop the sign."
	case name == "air temperature" && v > 50 && v <= 125:
		return "Is the column in °F? Write air_F in the head."
	case name == "air temperature" && v > 200 && v < 340:
		return "Is the column in kelvin? Write air_K in the head."
	case name == "cloud" && v > 1 && v <= 10:
		return "Is the column in oktas, tenths or percent? Write cloud_oktas, cloud_tenths or cloud_% in the head."
	case name == "cloud" && v > 10 && v <= 100:
		return "Is the column in percent? Write cloud_% in the head."
	case name == "sun" && v < 0:
		return "Instruments read a little below zero at night; this is too far: leave the cell empty."
	}
	return "Look it up in the source of the record, or leave the cell empty."
}

func span(q quantity) string {
	s := fmt.Sprintf("%g–%g", q.low, math.Floor(q.high))
	if q.unit != "" {
		s += " " + q.unit
	}
	return s
}

func number(v float64, unit string) string {
	if unit == "" {
		return fmt.Sprintf("%g", v)
	}
	return fmt.Sprintf("%g %s", v, unit)
}
