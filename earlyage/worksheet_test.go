package earlyage

import (
	"context"
	"math"
	"strings"
	"testing"
)

func TestWindowWorking(t *testing.T) {
	for name, c := range map[string]Column{"hot": hot(t), "cold": cold(t)} {
		m, err := RunMembers(context.Background(), Pour{Column: c, Restraint: usualRestraint(), Seed: 1, Count: 4})
		if err != nil {
			t.Fatal(err)
		}
		for _, key := range []string{"ordinary", "early-entry"} {
			saw, _ := SawFor(key, "medium")
			w := m.Window(saw, 0)
			s := m.WindowWorking(w, "window-1", "strip 1")
			for _, l := range s.Lines {
				if math.IsNaN(l.Value) || l.Source.Work == "" || l.Numbers == "" {
					t.Errorf("%s %s: line %s has no value, numbers or source: %+v", name, key, l.Symbol, l)
				}
				note := ""
				if l.Check != nil {
					note = strings.TrimSpace(l.Check.What)
					t.Logf("%s %s %s = %s = %s %s | %s %.4g apart %.0f%% flag %v", name, key, l.Symbol, l.Numbers, l.Text, l.Unit, note, l.Check.Value, 100*l.Check.Apart, l.Check.Flag)
					continue
				}
				t.Logf("%s %s %s = %s = %s %s", name, key, l.Symbol, l.Numbers, l.Text, l.Unit)
			}
		}
	}
}
