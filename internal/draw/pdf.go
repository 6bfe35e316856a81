package draw

import (
	"math"

	"codeberg.org/go-pdf/fpdf"
)

// PDF puts the drawing on the current page with its top left at x, y. The
// document must count in millimetres and have the font family loaded, regular and
// bold; words goes over every text before it is set, so that the caller can
// replace letters its font lacks (nil leaves them).
func (s *Scene) PDF(doc *fpdf.Fpdf, x, y float64, family string, words func(string) string) {
	if words == nil {
		words = func(t string) string { return t }
	}
	w := &pdfWriter{doc: doc, x: x, y: y, family: family, words: words}
	s.paint(w)
	doc.SetDashPattern(nil, 0)
	doc.SetLineCapStyle("butt")
	doc.SetLineJoinStyle("miter")
}

type pdfWriter struct {
	doc    *fpdf.Fpdf
	x, y   float64
	family string
	words  func(string) string
}

func (w *pdfWriter) open(*Group)  {}
func (w *pdfWriter) close(*Group) {}

// set makes pen and fill current and returns the style letters, empty when
// neither is drawn.
func (w *pdfWriter) set(pen Pen, fill Color) string {
	style := ""
	if fill.Set {
		w.doc.SetFillColor(int(fill.R), int(fill.G), int(fill.B))
		style = "F"
	}
	if pen.Color.Set {
		w.doc.SetDrawColor(int(pen.Color.R), int(pen.Color.G), int(pen.Color.B))
		w.doc.SetLineWidth(pen.Width)
		w.doc.SetDashPattern(append([]float64{}, pen.Dash...), 0)
		caps, join := "butt", "miter"
		if pen.Round {
			caps, join = "round", "round"
		}
		w.doc.SetLineCapStyle(caps)
		w.doc.SetLineJoinStyle(join)
		style += "D"
	}
	return style
}

func (w *pdfWriter) path(rings [][]Point, closed bool, pen Pen, fill Color) {
	style := w.set(pen, fill)
	if style == "" {
		return
	}
	for _, ring := range rings {
		for i, p := range ring {
			if i == 0 {
				w.doc.MoveTo(w.x+p.X, w.y+p.Y)
			} else {
				w.doc.LineTo(w.x+p.X, w.y+p.Y)
			}
		}
		if closed {
			w.doc.ClosePath()
		}
	}
	if fill.Set && len(rings) > 1 {
		style += "*" // even-odd: holes stay empty
	}
	w.doc.DrawPath(style)
}

func (w *pdfWriter) disc(at Point, radius float64, pen Pen, fill Color) {
	if style := w.set(pen, fill); style != "" {
		w.doc.Circle(w.x+at.X, w.y+at.Y, radius, style)
	}
}

func (w *pdfWriter) text(at Point, t Text) {
	style := ""
	if t.Bold {
		style = "B"
	}
	words := w.words(t.Words)
	w.doc.SetFont(w.family, style, t.Height*72/25.4)
	width := w.doc.GetStringWidth(words)
	left := w.x + at.X
	switch t.Anchor {
	case Middle:
		left -= width / 2
	case Right:
		left -= width
	}
	turned := math.Abs(t.Angle) > 1e-9
	if turned {
		w.doc.TransformBegin()
		w.doc.TransformRotate(t.Angle, w.x+at.X, w.y+at.Y)
	}
	if t.Halo.Set {
		w.doc.SetDrawColor(int(t.Halo.R), int(t.Halo.G), int(t.Halo.B))
		w.doc.SetTextColor(int(t.Halo.R), int(t.Halo.G), int(t.Halo.B))
		w.doc.SetLineWidth(t.Height * 0.3)
		w.doc.SetDashPattern(nil, 0)
		w.doc.SetLineJoinStyle("round")
		w.doc.SetTextRenderingMode(2)
		w.doc.Text(left, w.y+at.Y, words)
		w.doc.SetTextRenderingMode(0)
	}
	w.doc.SetTextColor(int(t.Color.R), int(t.Color.G), int(t.Color.B))
	w.doc.Text(left, w.y+at.Y, words)
	if turned {
		w.doc.TransformEnd()
	}
}
