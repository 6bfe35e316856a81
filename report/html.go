package report

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"

	"slabwright/internal/draw"
	"slabwright/internal/page"
	"slabwright/working"
)

//go:embed report.css
var sheetCSS string

//go:embed report.html.tmpl
var sheetHTML string

// HTML returns the report as one file that needs nothing else: style and drawings
// are inside it, and every figure leads to its working. It says what the PDF says.
func HTML(c *Content) ([]byte, error) {
	if bad := c.Check(); len(bad) > 0 {
		return nil, bad[0]
	}
	r := newRefs(c, nil)
	view := htmlView{
		CSS: template.CSS(sheetCSS), Title: titleOf(c), Lines: titleLines(c), Draft: isDraft(c), Foot: headOf(c).Foot,
		Plan: svg(PlanSmall(c, 120, 95, ""), "plan-one"), End: endLines(c),
	}
	for i, a := range fiveAnswers(c) {
		v := htmlAnswer{N: i + 1, Key: a.Key, Question: a.Question, Plain: sentence(a.Plain), Exact: exactOf(a)}
		if a.Chance != nil {
			v.Sure, v.Bar = a.Chance.Lines(), svg(chanceBar(*a.Chance, 60), "sure-"+a.Key)
		}
		for _, id := range a.Workings {
			v.Workings = append(v.Workings, workingView(r, id))
		}
		view.Answers = append(view.Answers, v)
	}
	for _, b := range body(c, r) {
		v := htmlBlockOf(b)
		if v.Kind == "" {
			continue
		}
		if h, ok := b.(heading); ok && h.level == 1 {
			view.Contents = append(view.Contents, page.Run{Words: h.words, Link: h.anchor})
		}
		view.Blocks = append(view.Blocks, v)
	}
	var out bytes.Buffer
	if err := reportTemplate.Execute(&out, view); err != nil {
		return nil, fmt.Errorf("report: %w", err)
	}
	return out.Bytes(), nil
}

// htmlView is what the template sets.
type htmlView struct {
	CSS      template.CSS
	Title    string
	Lines    []string
	Draft    bool
	Foot     string
	Plan     template.HTML
	Answers  []htmlAnswer
	End      []page.Text
	Contents []page.Run
	Blocks   []htmlBlock
}

type htmlAnswer struct {
	N                          int
	Key, Question, Plain, Sure string
	Exact                      string
	Bar                        template.HTML
	Workings                   []htmlWorking
}

// htmlWorking is the short form of a working beside a figure: its title and last
// line.
type htmlWorking struct {
	Ref    page.Text
	Title  string
	Result string
	Source string
}

// htmlBlock is one block; Kind says which of the fields are set.
type htmlBlock struct {
	Kind     string
	Level    int
	ID       string
	Words    string
	Text     page.Text
	Note     page.Text
	Items    []page.Text
	Columns  []htmlColumn
	Rows     [][]page.Text
	Headless bool
	SVG      template.HTML
	Lines    []htmlLine
	Checked  bool
	Blocks   []htmlBlock
}

type htmlColumn struct {
	Head    string
	Numbers bool
}

type htmlLine struct {
	Source     string
	Text, Says page.Text
}

func htmlBlockOf(b block) htmlBlock {
	switch v := b.(type) {
	case heading:
		return htmlBlock{Kind: "heading", Level: v.level + 1, Words: v.words, ID: v.anchor}
	case para:
		return htmlBlock{Kind: "para", Text: v.text, Note: v.note}
	case bullets:
		return htmlBlock{Kind: "bullets", Items: v.items}
	case table:
		h := htmlBlock{Kind: "table", Words: v.caption, Rows: v.rows, Headless: true}
		for _, c := range v.columns {
			h.Columns = append(h.Columns, htmlColumn{c.Head, c.Align == page.AlignRight || c.Align == page.AlignDecimal})
			h.Headless = h.Headless && c.Head == ""
		}
		return h
	case figure:
		return htmlBlock{Kind: "figure", ID: v.id, SVG: svg(v.scene, v.id), Text: v.caption}
	case locator:
		return htmlBlock{Kind: "locator", ID: v.id, SVG: svg(v.scene, v.id)}
	case fold:
		h := htmlBlock{Kind: "fold", Words: v.summary}
		for _, in := range v.blocks {
			h.Blocks = append(h.Blocks, htmlBlockOf(in))
		}
		return h
	case sheet:
		h := htmlBlock{Kind: "sheet", ID: "w-" + v.sheet.ID, Words: v.number + "  " + titled(v.sheet.Title)}
		for _, basis := range v.sheet.Basis {
			h.Items = append(h.Items, page.Plain(sentence(basis)))
		}
		rows, checked := sheetRows(v.sheet, false, map[string]bool{})
		h.Checked = checked
		for _, l := range rows {
			h.Lines = append(h.Lines, htmlLine{l.source, l.text, l.check})
		}
		return h
	}
	return htmlBlock{} // a page break is nothing on a screen
}

func svg(s *draw.Scene, id string) template.HTML { return template.HTML(s.SVGWithID("svg-" + id)) }

func workingView(r *refs, id string) htmlWorking {
	v := htmlWorking{Ref: r.to(id)}
	for _, s := range r.c.Workings {
		if s.ID == id {
			v.Title = titled(s.Title)
			if n := len(s.Lines); n > 0 {
				v.Result, v.Source = lineResult(s.Lines[n-1]), s.Lines[n-1].Source.String()
			}
		}
	}
	return v
}

// lineResult is "t_c = 13.2 h".
func lineResult(l working.Line) string { return l.Symbol + " = " + answerOf(l) }

var reportTemplate = template.Must(template.New("report").Funcs(template.FuncMap{
	"numbers": func(b htmlBlock, i int) bool { return i < len(b.Columns) && b.Columns[i].Numbers },
	"tidy":    tidy,
}).Parse(sheetHTML))
