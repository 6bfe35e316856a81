package report

import (
	"regexp"
	"sort"
	"strings"

	"slabwright/checks"
	"slabwright/internal/page"
	"slabwright/source"
)

var year = regexp.MustCompile(`\b(1[89]|20)\d\d\b`)

// shortTitle is a work as it stands beside a line: its author and year, or the number
// of the document. The full title stands in the list at the end.
func shortTitle(c source.Citation) string {
	switch c.Work {
	case "mechanics":
		return "Statics"
	case "practice":
		return "Common practice"
	case "own":
		return "Own work"
	}
	head, rest, more := strings.Cut(c.Title, ",")
	for _, cut := range []string{" Concrete wearing", " Guide to", " Control of", " magazine", " on joints", " on aggregate", " on subgrade", " Classification", " Concrete: spec", " Guide for", " (1956)", " (1967)"} {
		head, _, _ = strings.Cut(head, cut)
	}
	if y := year.FindString(rest); more && y != "" && !year.MatchString(head) {
		head += " " + y
	}
	return head
}

// citeText is a citation beside a line, with a raised letter for how it is known.
func citeText(c source.Citation) page.Text {
	words := shortTitle(c)
	if c.Place != "" {
		words += ", " + c.Place
	}
	t := mathText(words, page.Run{Quiet: true})
	letter := map[source.How]string{source.Seen: "s", source.Memory: "m"}[c.How]
	if letter != "" && c.Work != "mechanics" {
		t = append(t, page.Run{Words: thin + letter, Quiet: true, Shift: 1})
	}
	return t
}

// calcReferences lists every work that a calculation cites, with its full title and
// how it is known.
func calcReferences(d *page.Document, c *checks.Calc) {
	full := map[string]string{}
	add := func(s source.Citation) {
		if s.Work != "practice" && s.Work != "own" && s.Title != "" {
			full[shortTitle(s)] = s.Title
		}
	}
	for _, s := range c.Sheets {
		for _, l := range s.Lines {
			add(l.Source)
			if l.Check != nil {
				add(l.Check.Source)
			}
		}
	}
	var names []string
	for n := range full {
		names = append(names, n)
	}
	sort.Strings(names)
	t := page.Table{Whole: true, Tight: true, Bare: true, Size: 7.6, Columns: []page.Column{{Share: 30}, {Share: 100}}}
	for _, n := range names {
		t.Rows = append(t.Rows, []page.Text{page.Plain(n), page.Quiet(full[n])})
	}
	d.Keep(d.TableStart(t) + 12)
	d.WideHeading(3, "References", "calc-references")
	d.Table(t)
}
