package report

import (
	"bytes"
	"compress/zlib"
	"flag"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf16"

	"slabwright/internal/page"
	"slabwright/internal/page/fonts"
)

var update = flag.Bool("update", false, "write the golden files anew")

// golden compares an output with the file kept for it.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Equal(got, want) {
		return
	}
	g, w := strings.Split(string(got), "\n"), strings.Split(string(want), "\n")
	for i := range g {
		if i >= len(w) || g[i] != w[i] {
			line := "(nothing)"
			if i < len(w) {
				line = w[i]
			}
			t.Fatalf("%s line %d\n got %s\nwant %s\nIf the change is meant: go test ./report -update, and read the diff.", name, i+1, g[i], line)
		}
	}
	t.Fatalf("%s: %d lines, want %d", name, len(g), len(w))
}

var (
	svgPart = regexp.MustCompile(`(?s)<svg.*?</svg>`)
	style   = regexp.MustCompile(`(?s)<style>.*?</style>`)
	tag     = regexp.MustCompile(`<[^>]*>`)
	blanks  = regexp.MustCompile(`[ \t]*\n\s*`)
)

// textOf is the words of the HTML without its drawings.
func textOf(html []byte) string {
	s := style.ReplaceAllString(svgPart.ReplaceAllString(string(html), ""), "")
	s = strings.NewReplacer("<br>", "\n", "</td>", " | ", "</th>", " | ", "</tr>", "\n", "</p>", "\n", "</li>", "\n", "</h1>", "\n", "</h2>", "\n", "</h3>", "\n", "</h4>", "\n", "</summary>", "\n", "</caption>", "\n", "</figcaption>", "\n").Replace(s)
	s = tag.ReplaceAllString(s, "")
	s = strings.NewReplacer("&amp;", "&", "&lt;", "<", "&gt;", ">", "&#34;", `"`, "&#39;", "'", "&#43;", "+").Replace(s)
	return strings.TrimSpace(blanks.ReplaceAllString(s, "\n")) + "\n"
}

func TestGolden(t *testing.T) {
	c := fixture()
	html, err := HTML(c)
	if err != nil {
		t.Fatal(err)
	}
	keep(t, "report.html", html)
	golden(t, "plan.svg", PlanSVG(c))
	golden(t, "report.txt", []byte(textOf(html)))
	golden(t, "page-one.txt", []byte(PageOneText(c, 72)))
	golden(t, "findings.txt", []byte(FindingsText(c, 72)))
	golden(t, "causes-F1.txt", []byte(CausesText(c, "f1", 72)))
	golden(t, "window.txt", []byte(WindowText(c, 72)))
	golden(t, "whatif.txt", []byte(WhatIfText(c, "", 120)))
	golden(t, "whatif-narrow.txt", []byte(WhatIfText(c, "s2", 72)))
}

var (
	streams = regexp.MustCompile(`(?s)stream\r?\n(.*?)\r?\nendstream`)
	shown   = regexp.MustCompile(`(?s)\((.*?[^\\])\) Tj`)
)

// pdfPages reads back the words of each page.
func pdfPages(t *testing.T, pdf []byte) []string {
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
		var words strings.Builder
		for _, s := range shown.FindAllSubmatch(text, -1) {
			raw := bytes.ReplaceAll(bytes.ReplaceAll(bytes.ReplaceAll(s[1], []byte(`\\`), []byte("\\")), []byte(`\(`), []byte("(")), []byte(`\)`), []byte(")"))
			var units []uint16
			for i := 0; i+1 < len(raw); i += 2 {
				units = append(units, uint16(raw[i])<<8|uint16(raw[i+1]))
			}
			words.WriteString(string(utf16.Decode(units)) + "\n")
		}
		pages = append(pages, words.String())
	}
	return pages
}

func pdfOf(t *testing.T, c *Content, on page.Paper) []string {
	t.Helper()
	pdf, err := PDFOn(c, on)
	if err != nil {
		t.Fatal(err)
	}
	return pdfPages(t, pdf)
}

func TestPageOneIsOnePage(t *testing.T) {
	usual := fixture()
	wordy := fixture()
	usual.Pours, wordy.Pours = usual.Pours[:1], wordy.Pours[:1] // page one does not depend on the others
	for i := range wordy.PageOne.Answers {
		wordy.PageOne.Answers[i].Plain = strings.Repeat(wordy.PageOne.Answers[i].Plain+" ", 3)
		wordy.PageOne.Answers[i].Exact = strings.Repeat(wordy.PageOne.Answers[i].Exact+" ", 8)
	}
	for _, c := range []struct {
		name   string
		c      *Content
		on     page.Paper
		second string
	}{
		{"usual", usual, page.A4, "The slab as drawn"}, {"usual", usual, page.Letter, "The slab as drawn"},
		{"wordy", wordy, page.A4, "The answers said exactly"}, {"wordy", wordy, page.Letter, "The answers said exactly"},
	} {
		pages := pdfOf(t, c.c, c.on)
		for _, want := range []string{"1 Is it structural?", "2 Will it get worse?", "3 Why did it crack?", "4 What now?", "Most important doubt.", "Not done.", "Who may rely on this."} {
			if !strings.Contains(pages[0], want) {
				t.Errorf("%s on %s: page one lacks %q", c.name, c.on.Name, want)
			}
		}
		if !strings.Contains(pages[1], c.second) {
			t.Errorf("%s on %s: page two should begin %q", c.name, c.on.Name, c.second)
		}
	}
}

// Nothing may be set below the foot line of a page: every text of the body stands
// above it.
func TestNothingRunsOffThePage(t *testing.T) {
	for _, c := range []*Content{fixture(), {}} {
		pdf, err := PDF(c)
		if err != nil {
			t.Fatal(err)
		}
		place := regexp.MustCompile(`BT (-?[\d.]+) (-?[\d.]+) Td`)
		for _, m := range streams.FindAllSubmatch(pdf, -1) {
			z, err := zlib.NewReader(bytes.NewReader(m[1]))
			if err != nil {
				continue
			}
			text, _ := io.ReadAll(z)
			for _, at := range place.FindAllSubmatch(text, -1) {
				y := string(at[2])
				if strings.HasPrefix(y, "-") || len(strings.Split(y, ".")[0]) < 2 {
					t.Errorf("a text stands at y = %s points from the foot of the sheet", y)
				}
			}
		}
	}
}

func TestReferencesLeadToWorkings(t *testing.T) {
	c := fixture()
	if bad := c.Check(); len(bad) > 0 {
		t.Fatalf("fixture: %v", bad)
	}
	html, err := HTML(c)
	if err != nil {
		t.Fatal(err)
	}
	ids := map[string]int{}
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllSubmatch(html, -1) {
		ids[string(m[1])]++
	}
	for id, n := range ids {
		if n > 1 {
			t.Errorf("id %s stands %d times", id, n)
		}
	}
	links := regexp.MustCompile(`href="([^"]*)"`).FindAllSubmatch(html, -1)
	if len(links) < 50 {
		t.Errorf("only %d links", len(links))
	}
	for _, m := range links {
		if to, inside := strings.CutPrefix(string(m[1]), "#"); !inside || ids[to] == 0 {
			t.Errorf("link to %s leads nowhere", m[1])
		}
	}
	for _, s := range c.Workings {
		if ids["w-"+s.ID] == 0 {
			t.Errorf("working %s is not in the HTML", s.ID)
		}
	}
	c.Workings = c.Workings[1:]
	if _, err := PDF(c); err == nil || !strings.Contains(err.Error(), "drying-strip-1") {
		t.Errorf("a working without a sheet: got %v, want an error that names it", err)
	}
}

func TestHTMLNeedsNothingElse(t *testing.T) {
	html, err := HTML(fixture())
	if err != nil {
		t.Fatal(err)
	}
	s := strings.ReplaceAll(string(html), `xmlns="http://www.w3.org/2000/svg"`, "")
	for _, outside := range []string{"http:", "https:", "src=", "url(", "@import", "<script", "<link"} {
		if strings.Contains(s, outside) {
			t.Errorf("the page refers to something outside: %s", outside)
		}
	}
}

// Words the report never uses.
var never = regexp.MustCompile(`(?i)\b(liable|liability|at fault|negligen\w*|defects?|failures?|severity|smart|AI|health score|blame)\b`)

func TestWords(t *testing.T) {
	c := fixture()
	html, err := HTML(c)
	if err != nil {
		t.Fatal(err)
	}
	text := textOf(html)
	for form, words := range map[string]string{"HTML": text, "terminal": PageOneText(c, 80) + FindingsText(c, 80) + CausesText(c, "F1", 80) + WindowText(c, 80) + WhatIfText(c, "", 80), "plan": string(PlanSVG(c))} {
		if bad := never.FindAllString(words, -1); len(bad) > 0 {
			t.Errorf("%s uses %q", form, bad)
		}
	}
	for form, words := range map[string]string{"HTML": text, "terminal": PageOneText(c, 200), "PDF": strings.ReplaceAll(pdfOf(t, c, page.A4)[0], "\n", " ")} {
		first := strings.Index(strings.ToLower(words), "structural")
		defined := strings.Index(words, "Structural here means")
		if first < 0 || defined < 0 || defined-first > 400 {
			t.Errorf("%s: structural stands at %d and is defined at %d", form, first, defined)
		}
	}
	if missing := fonts.Missing(text); len(missing) > 0 {
		t.Errorf("letters the fonts lack: %q", missing)
	}
}

func TestPDFSaysWhatTheHTMLSays(t *testing.T) {
	c := fixture()
	html, err := HTML(c)
	if err != nil {
		t.Fatal(err)
	}
	squeeze := func(s string) string {
		return strings.Join(strings.Fields(strings.NewReplacer("|", " ", "\u00a0", " ").Replace(s)), "")
	}
	pdf, screen := squeeze(strings.Join(pdfOf(t, c, page.A4), " ")), squeeze(textOf(html))
	for _, f := range c.Findings {
		for _, want := range []string{tidy(f.Title), sentence(f.Answer)} {
			if !strings.Contains(pdf, squeeze(want)) || !strings.Contains(screen, squeeze(want)) {
				t.Errorf("finding %s: %q is not in both", f.Finding.ID, want)
			}
		}
	}
}

// With a reader of PDFs at hand the words must come out of the file as they went
// in: an independent check of fonts and encoding.
func TestAnotherReaderReadsThePDF(t *testing.T) {
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("pdftotext is not here")
	}
	pdf, err := PDF(fixture())
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(tool, "-enc", "UTF-8", "-", "-")
	cmd.Stdin = bytes.NewReader(pdf)
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"Why apron A cracked", "page 1 of ", "ε_sh", "√(Δx² + Δy²)", "10⁻⁵", "kg/m²h", "DRAFT", "Who may rely on this."} {
		if !bytes.Contains(out, []byte(want)) {
			t.Errorf("pdftotext does not find %q", want)
		}
	}
}
