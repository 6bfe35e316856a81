package dxf

import (
	"fmt"
	"strings"
)

// Unit is the meaning of one unit of length in a drawing, by the numbers of the
// header variable $INSUNITS. Numbers in a drawing have no unit of their own.
type Unit int

// Units a drawing is likely to be in. None means that nobody said.
const (
	None       Unit = 0
	Inch       Unit = 1
	Foot       Unit = 2
	Millimetre Unit = 4
	Centimetre Unit = 5
	Metre      Unit = 6
)

var units = map[Unit]struct {
	name   string
	metres float64
}{
	1: {"in", 0.0254}, 2: {"ft", 0.3048}, 3: {"mi", 1609.344}, 4: {"mm", 0.001}, 5: {"cm", 0.01}, 6: {"m", 1}, 7: {"km", 1000},
	8: {"µin", 2.54e-8}, 9: {"mil", 2.54e-5}, 10: {"yd", 0.9144}, 13: {"µm", 1e-6}, 14: {"dm", 0.1}, 15: {"dam", 10}, 16: {"hm", 100},
	21: {"US survey ft", 1200.0 / 3937},
}

// Metres returns how long one unit is, and whether that is known.
func (u Unit) Metres() (float64, bool) {
	v, ok := units[u]
	return v.metres, ok
}

// String returns the unit's sign.
func (u Unit) String() string {
	if v, ok := units[u]; ok {
		return v.name
	}
	if u == None {
		return "no unit"
	}
	return fmt.Sprintf("unit number %d", int(u))
}

// ParseUnit reads the sign of a unit a person would type: mm, cm, m, in or ft.
func ParseUnit(s string) (Unit, error) {
	for _, u := range []Unit{Millimetre, Centimetre, Metre, Inch, Foot} {
		if strings.EqualFold(strings.TrimSpace(s), u.String()) {
			return u, nil
		}
	}
	return None, fmt.Errorf("%q is not a unit of length of a drawing; say mm, cm, m, in or ft", s)
}
