package layout

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slabwright/plan"
)

// sketchSVG draws the alternatives side by side, to be looked at.
func sketchSVG(t *testing.T, dir, name string, all []Alternative) {
	low, high := plan.Ring(all[0].Slab.Outline).Box()
	w, h := high.X-low.X, high.Y-low.Y
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%.0f" height="%.0f" viewBox="0 0 %.2f %.2f"><rect width="100%%" height="100%%" fill="white"/>`,
		1500.0, 1500*(h+2)/(3*(w+2)), 3*(w+2), h+2)
	for i, a := range all[:3] {
		dx := float64(i)*(w+2) + 1 - low.X
		at := func(p plan.Point) string { return fmt.Sprintf("%.3f,%.3f ", p.X+dx, high.Y-p.Y+1) }
		line := func(path []plan.Point, style string) {
			b.WriteString(`<polyline points="`)
			for _, p := range path {
				b.WriteString(at(p))
			}
			fmt.Fprintf(&b, `" style="fill:none;stroke-width:%.3f;%s"/>`, w/250, style)
		}
		line(closed(a.Slab.Outline), "stroke:#000")
		for _, f := range a.Slab.Fixtures {
			line(closed(f.Shape), "stroke:#777;fill:#ccc")
		}
		style := map[plan.JointKind]string{plan.Sawn: "stroke:#0072b2", plan.Formed: "stroke:#d55e00", plan.Isolation: "stroke:#009e73"}
		for _, j := range a.Slab.Joints {
			line(j.Path, style[j.Kind])
		}
		for _, tr := range a.Trimmers {
			line([]plan.Point{tr.From, tr.To}, "stroke:#f00")
		}
		for _, x := range a.Warnings {
			if x.Severity == Must {
				p := strings.Split(strings.TrimSpace(at(x.At)), ",")
				fmt.Fprintf(&b, `<circle cx="%s" cy="%s" r="%.2f" fill="none" stroke="red" stroke-width="%.3f"/>`, p[0], p[1], w/60, w/300)
			}
		}
	}
	b.WriteString("</svg>")
	if err := os.WriteFile(filepath.Join(dir, strings.ReplaceAll(name, " ", "-")+".svg"), []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
