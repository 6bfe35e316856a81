package web

import (
	"strings"
	"testing"
)

// TestEveryScreen opens each screen at desk and phone width and in each theme:
// no rule of accessibility broken, nothing wider than the window.
func TestEveryScreen(t *testing.T) {
	s := newScreen(t, filled(t))
	s.start()
	for _, size := range []struct {
		name          string
		width, height int64
		themes        []string
	}{{"desk", 1440, 900, []string{"day", "sun", "night"}}, {"phone", 390, 844, []string{"day", "sun", "night"}}, {"narrow", 320, 640, []string{"day"}}} {
		s.size(size.width, size.height)
		for _, theme := range size.themes {
			s.open("keys")
			eval[bool](s, `localStorage.setItem("slabwright-theme", "`+theme+`"), true`)
			for _, place := range screens {
				where := size.name + " " + theme + " " + place
				s.open(place)
				if got := eval[string](s, "document.documentElement.dataset.theme"); got != theme {
					t.Fatalf("%s: theme is %q", where, got)
				}
				s.fits(where)
				s.axe(where)
				s.shot(strings.ReplaceAll(where, "/", "-"))
			}
		}
	}
	s.quiet()
}
