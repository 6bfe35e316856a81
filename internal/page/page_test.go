package page

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"slabwright/internal/draw"
)

var created = time.Date(2025, 6, 30, 8, 0, 0, 0, time.UTC)

func head() Head {
	return Head{Title: "Test", Author: "Nobody", Language: "en", Foot: "25-041", Created: created}
}

var (
	streams = regexp.MustCompile(`(?s)stream\r?\n(.*?)\r?\nendstream`)
	shown   = regexp.MustCompile(`(?s)\((.*?[^\\])\) Tj`)
)

// pagesOf reads back the words of each page, in the order they were set. It knows
// only what this package writes: one stream a page, letters as UTF-16.
func pagesOf(t *testing.T, pdf []byte) []string {
	t.Helper()
	var pages []string
	for _, m := range streams.FindAllSubmatch(pdf, -1) {
		z, err := zlib.NewReader(bytes.NewReader(m[1]))
		if err != nil {
			continue
		}
		text, _ := io.ReadAll(z)
		if !bytes.Contains(text, []byte(" Tj")) {
			continue
		}
		var words []string
		for _, s := range shown.FindAllSubmatch(text, -1) {
			raw := unescape(s[1])
			var units []uint16
			for i := 0; i+1 < len(raw); i += 2 {
				units = append(units, uint16(raw[i])<<8|uint16(raw[i+1]))
			}
			words = append(words, string(utf16.Decode(units)))
		}
		pages = append(pages, strings.Join(words, "|"))
	}
	return pages
}

func unescape(s []byte) []byte {
	var out []byte
	for i := 0; i < len(s); i++ {
		if s[i] == '\\' && i+1 < len(s) {
			i++
			if s[i] == 'r' {
				out = append(out, '\r')
				continue
			}
		}
		out = append(out, s[i])
	}
	return out
}

func TestPageNumbersNamedInTheTextComeTrue(t *testing.T) {
	var said, stood [30]int
	pdf, err := Build(A4, head(), func(d *Document) {
		for i := range said { // all references first, on page one
			name := fmt.Sprintf("a%d", i)
			said[i] = d.PageOf(name)
			d.Paragraph(Text{{Words: fmt.Sprintf("see page %d", said[i]), Link: name}})
		}
		for i := range stood {
			d.Keep(90)
			d.Heading(2, fmt.Sprintf("Part %d", i), fmt.Sprintf("a%d", i))
			stood[i] = d.Page()
			d.Skip(80)
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	for i := range said {
		if said[i] != stood[i] {
			t.Errorf("part %d was said to be on page %d and is on %d", i, said[i], stood[i])
		}
	}
	pages := pagesOf(t, pdf)
	for i, p := range pages {
		if want := fmt.Sprintf("page %d of %d", i+1, len(pages)); !strings.Contains(p, want) {
			t.Errorf("page %d does not say %q", i+1, want)
		}
	}
}

func TestALinkToNowhereIsAnError(t *testing.T) {
	_, err := Build(A4, head(), func(d *Document) { d.Paragraph(Text{{Words: "W9", Link: "w-lost"}}) })
	if err == nil || !strings.Contains(err.Error(), "w-lost") {
		t.Errorf("got %v, want an error naming w-lost", err)
	}
}

func TestLinesKeepEveryWordAndTheWidth(t *testing.T) {
	const words = "The slab cracked before the saw came, at 02:40, σ ≥ fct, and an unbroken9f2c41aa03d7b6e8c1905f7be2d4a6681b3c5d7e9f00112233445566778899aaword."
	_, err := Build(A4, head(), func(d *Document) {
		for _, width := range []float64{12, 30, 55, 135} {
			text := Text{{Words: words[:40]}, {Words: words[40:60], Bold: true}, {Words: words[60:]}}
			var back strings.Builder
			for _, r := range d.rows(text, width, 9.5) {
				sum := 0.0
				for _, p := range r.pieces {
					sum += d.width(p, 9.5)
					back.WriteString(p.Words)
				}
				if sum > width+0.7 { // a space left at the end of a piece
					t.Errorf("width %g: a line is %.2f wide", width, sum)
				}
			}
			if got, want := strings.ReplaceAll(back.String(), " ", ""), strings.ReplaceAll(words, " ", ""); got != want {
				t.Errorf("width %g: words came out as %q", width, got)
			}
		}
	})
	if err != nil {
		t.Fatal(err)
	}
}

func TestTablesRepeatTheirHeadAndLoseNoRow(t *testing.T) {
	const rows = 150
	pdf, err := Build(Letter, head(), func(d *Document) {
		tb := Table{Columns: []Column{{Head: "Name", Share: 30}, {Head: "Width mm", Share: 20, Align: AlignDecimal}}}
		for i := range rows {
			tb.Rows = append(tb.Rows, []Text{Plain(fmt.Sprintf("row-%d.", i)), Plain("0.5")})
		}
		d.Table(tb)
	})
	if err != nil {
		t.Fatal(err)
	}
	pages := pagesOf(t, pdf)
	if len(pages) < 3 {
		t.Fatalf("%d rows took %d pages", rows, len(pages))
	}
	for i, p := range pages {
		if strings.Count(p, "Width mm") != 1 {
			t.Errorf("page %d has the head %d times", i+1, strings.Count(p, "Width mm"))
		}
	}
	all := strings.Join(pages, "|")
	for i := range rows {
		if n := strings.Count(all, fmt.Sprintf("row-%d.", i)); n != 1 {
			t.Errorf("row %d stands %d times", i, n)
		}
	}
}

func TestARowTallerThanAPageGoesOn(t *testing.T) {
	long := strings.Repeat("word ", 4000)
	pdf, err := Build(A4, head(), func(d *Document) {
		d.Table(Table{Columns: []Column{{Head: "A", Share: 1}, {Head: "B", Share: 1}}, Rows: [][]Text{{Plain(long), Plain("x")}}})
	})
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Count(strings.Join(pagesOf(t, pdf), " "), "word"); got != 4000 {
		t.Errorf("%d words of 4000 came through", got)
	}
}

func TestFigureAndCaptionStayTogether(t *testing.T) {
	pdf, err := Build(A4, head(), func(d *Document) {
		d.Skip(d.Room() - 60)
		s := draw.New(100, 55, "t", "d")
		s.Group("", "", draw.Paper).Add(draw.Text{At: draw.Point{X: 5, Y: 5}, Words: "in the figure", Height: 3, Color: draw.RGB(0, 0, 0)})
		d.Figure(s, Plain(strings.Repeat("its caption ", 20)))
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range pagesOf(t, pdf) {
		if strings.Contains(p, "in the figure") != strings.Contains(p, "its caption") {
			t.Error("figure and caption stand on different pages")
		}
	}
}

func TestDraftStandsOnEveryPage(t *testing.T) {
	for _, draft := range []bool{true, false} {
		h := head()
		h.Draft = draft
		pdf, err := Build(A4, h, func(d *Document) { d.Break(); d.Break() })
		if err != nil {
			t.Fatal(err)
		}
		for i, p := range pagesOf(t, pdf) {
			if strings.Contains(p, "DRAFT") != draft {
				t.Errorf("draft %v: page %d says otherwise", draft, i+1)
			}
		}
	}
}

func TestSameDocumentSameBytes(t *testing.T) {
	write := func(d *Document) {
		d.Heading(1, "One", "one")
		d.Note(Text{{Words: "see one", Link: "one"}})
		d.Paragraph(Plain("σ = 3.2 MPa"))
		d.Bullet(Italic("last"))
	}
	first, err := Build(A4, head(), write)
	if err != nil {
		t.Fatal(err)
	}
	second, _ := Build(A4, head(), write)
	if !bytes.Equal(first, second) {
		t.Error("two documents written alike differ")
	}
	if !bytes.Contains(first, []byte("D:20250630080000")) {
		t.Error("the date is not the one given")
	}
}
