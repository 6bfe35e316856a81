package earlyage

import (
	"context"
	"testing"
	"time"
)

// Morning pours cracked at more of their cuts in the first days than afternoon
// pours (Jeong 2008, 22 sections of a test road; abstract). Direction only.
func TestMorningPoursCrackSooner(t *testing.T) {
	used := func(hour int) float64 {
		c := pourOn(t, time.Date(2026, 7, 10, hour, 0, 0, 0, time.UTC), 25, 20, day(24, 6, 0.6, 2, 37))
		c.Thickness = 0.3
		p := Pour{Column: c, Restraint: usualRestraint(), Count: 1}
		m, err := RunMembers(context.Background(), p)
		if err != nil {
			t.Fatal(err)
		}
		share, _, _ := m.Share(72)
		return share
	}
	if morning, afternoon := used(8), used(15); !(morning > afternoon) {
		t.Errorf("share of strength used by day 3: morning %.2f, afternoon %.2f", morning, afternoon)
	}
}
