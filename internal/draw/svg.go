package draw

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// fontStack names the letters of an SVG; nothing is fetched for it.
const fontStack = "'Source Sans 3','Source Sans Pro',system-ui,sans-serif"

// SVG returns the drawing as one svg element with a title and a description and
// no reference to anything outside. The same scene always gives the same bytes.
// Styles are attributes, so a style sheet can set them again by class.
func (s *Scene) SVG() []byte { return s.SVGWithID("drawing") }

// SVGWithID is SVG with the id its title and description hang on, for a page
// that holds several drawings.
func (s *Scene) SVGWithID(id string) []byte {
	w := &svgWriter{}
	w.line(`<svg xmlns="http://www.w3.org/2000/svg" id="%s" viewBox="0 0 %s %s" role="img" aria-labelledby="%s-t %s-d" font-family="%s" data-width-mm="%s">`,
		escaped(id), number(s.Width), number(s.Height), escaped(id), escaped(id), fontStack, number(s.Width))
	w.line(`<title id="%s-t">%s</title>`, escaped(id), escaped(s.Title))
	w.line(`<desc id="%s-d">%s</desc>`, escaped(id), escaped(s.Desc))
	s.paint(w)
	w.line(`</svg>`)
	return []byte(w.String())
}

type svgWriter struct{ strings.Builder }

func (w *svgWriter) line(format string, args ...any) {
	fmt.Fprintf(w, format, args...)
	w.WriteByte('\n')
}

func (w *svgWriter) open(g *Group) {
	if g.Link != "" {
		w.line(`<a href="%s">`, escaped(g.Link))
	}
	var attrs strings.Builder
	if g.ID != "" {
		fmt.Fprintf(&attrs, ` id="%s"`, escaped(g.ID))
	}
	if g.Class != "" {
		fmt.Fprintf(&attrs, ` class="%s"`, escaped(g.Class))
	}
	w.line(`<g%s>`, attrs.String())
	if g.Title != "" {
		w.line(`<title>%s</title>`, escaped(g.Title))
	}
}

func (w *svgWriter) close(g *Group) {
	w.line(`</g>`)
	if g.Link != "" {
		w.line(`</a>`)
	}
}

func (w *svgWriter) path(rings [][]Point, closed bool, pen Pen, fill Color) {
	var d strings.Builder
	for _, ring := range rings {
		for i, p := range ring {
			if i == 0 {
				d.WriteByte('M')
			} else {
				d.WriteByte('L')
			}
			d.WriteString(number(p.X) + " " + number(p.Y))
		}
		if closed {
			d.WriteByte('Z')
		}
	}
	rule := ""
	if fill.Set && len(rings) > 1 {
		rule = ` fill-rule="evenodd"`
	}
	w.line(`<path d="%s" fill="%s"%s%s/>`, d.String(), paintName(fill), rule, penAttrs(pen))
}

func (w *svgWriter) disc(at Point, radius float64, pen Pen, fill Color) {
	w.line(`<circle cx="%s" cy="%s" r="%s" fill="%s"%s/>`, number(at.X), number(at.Y), number(radius), paintName(fill), penAttrs(pen))
}

func (w *svgWriter) text(at Point, t Text) {
	var attrs strings.Builder
	switch t.Anchor {
	case Middle:
		attrs.WriteString(` text-anchor="middle"`)
	case Right:
		attrs.WriteString(` text-anchor="end"`)
	}
	if t.Angle != 0 {
		fmt.Fprintf(&attrs, ` transform="rotate(%s %s %s)"`, number(-t.Angle), number(at.X), number(at.Y))
	}
	if t.Bold {
		attrs.WriteString(` font-weight="600"`)
	}
	if t.Halo.Set {
		fmt.Fprintf(&attrs, ` stroke="%s" stroke-width="%s" stroke-linejoin="round" paint-order="stroke"`, paintName(t.Halo), number(t.Height*0.3))
	}
	w.line(`<text x="%s" y="%s" font-size="%s" fill="%s"%s>%s</text>`,
		number(at.X), number(at.Y), number(t.Height), paintName(t.Color), attrs.String(), escaped(t.Words))
}

func penAttrs(p Pen) string {
	if !p.Color.Set {
		return ""
	}
	s := fmt.Sprintf(` stroke="%s" stroke-width="%s"`, paintName(p.Color), number(p.Width))
	if len(p.Dash) > 0 {
		parts := make([]string, len(p.Dash))
		for i, d := range p.Dash {
			parts[i] = number(d)
		}
		s += ` stroke-dasharray="` + strings.Join(parts, " ") + `"`
	}
	if p.Round {
		s += ` stroke-linecap="round" stroke-linejoin="round"`
	}
	return s
}

func paintName(c Color) string {
	if !c.Set {
		return "none"
	}
	return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
}

// number writes a length to a thousandth of a millimetre, shortest form.
func number(v float64) string {
	v = math.Round(v*1000) / 1000
	if v == 0 {
		return "0" // also for minus zero
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

var xmlEscapes = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

func escaped(s string) string { return xmlEscapes.Replace(s) }
