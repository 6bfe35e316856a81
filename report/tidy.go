package report

import (
	"regexp"
	"strconv"
	"strings"

	"slabwright/internal/page"
	"slabwright/working"
)

// units are those written behind numbers in sentences.
const units = `mm/m|mm|cm|km/h|km|kN/m²|kN|kg/m²h|kg/m²|kg/m³|kg|m/s|m²|m³|m|MPa|GPa|MN/m³|W/m²|°C|K|h|min|s|d|%|L/m³|L`

var (
	beforeUnit  = regexp.MustCompile(`(\d) (` + units + `)($|[\s.,;:)])`)
	outOf       = regexp.MustCompile(`(\d) in (10+)\b`)
	hyphenMinus = regexp.MustCompile(`(^|[\s(=<>~])-(\d)`)
)

// tidy sets a thin space that does not break between a number and its unit, keeps
// "7 in 10" on one line and sets a true minus before a number, in sentences written
// elsewhere.
func tidy(s string) string {
	if strings.ContainsAny(s, "0123456789") {
		s = beforeUnit.ReplaceAllString(s, "$1"+thin+"$2$3")
		s = outOf.ReplaceAllString(s, "$1\u00a0in\u00a0$2")
		s = hyphenMinus.ReplaceAllString(s, "$1−$2")
	}
	return s
}

// longNumber is a number with more decimals than anyone reads.
var longNumber = regexp.MustCompile(`\d+\.\d{4,}`)

// titled is tidy for a title: numbers carried at full precision are rounded to three
// figures, or to the whole above that.
func titled(s string) string {
	return tidy(longNumber.ReplaceAllStringFunc(s, func(n string) string {
		v, err := strconv.ParseFloat(n, 64)
		if err != nil {
			return n
		}
		return working.Figure(v, 3)
	}))
}

// tidyText is tidy for every run.
func tidyText(t page.Text) page.Text {
	out := make(page.Text, len(t))
	for i, r := range t {
		r.Words = tidy(r.Words)
		out[i] = r
	}
	return out
}

func tidyRows(rows [][]page.Text) [][]page.Text {
	out := make([][]page.Text, len(rows))
	for i, cells := range rows {
		out[i] = make([]page.Text, len(cells))
		for k, cell := range cells {
			out[i][k] = tidyText(cell)
		}
	}
	return out
}
