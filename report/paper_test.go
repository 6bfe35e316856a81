package report

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"slabwright/internal/page"
	"slabwright/source"
	"slabwright/working"
)

// causesSheet works two causes over so many observations the way a sheet of causes does.
func causesSheet(observations int) working.Sheet {
	own := source.Cite("own", "bands")
	s := working.Sheet{ID: "causes-F9", Title: "How the causes of finding F9 were weighed"}
	const prior, tempering, scale = 4.0, 0.5, 0.02
	for h, name := range []string{"joint sawn too late", "plastic shrinkage"} {
		sum := 0.0
		for i := range observations {
			p := 0.9 / float64(1+i+3*h)
			sum += 0.6 * math.Log(p)
			s.Add(working.New(fmt.Sprintf("s%d", i+1), fmt.Sprintf("%s: observation %d", name, i+1), "v·ln P", 0.6*math.Log(p), "", own,
				working.In("v", 0.6, "", "weight in its group"), working.In("P", p, "", "chance of the observation under the cause")))
		}
		s.Add(working.New("p", "chance that it is "+name, "a·e^(t·S)/Z", prior*math.Exp(tempering*sum)/scale, "", own,
			working.In("a", prior, "", "prior odds"), working.In("t", tempering, "", "tempering"), working.In("S", sum, "", "sum"), working.In("Z", scale, "", "scale")))
	}
	return s
}

// From the matrix alone a checker must come to the same chance.
func TestWeighingCanBeRedoneFromTheMatrix(t *testing.T) {
	s := causesSheet(5)
	m, ok := weighingOf(&s)
	if !ok || len(m.observations) != 5 || len(m.causes) != 2 {
		t.Fatalf("got %d observations of %d causes, %v", len(m.observations), len(m.causes), ok)
	}
	for _, c := range m.causes {
		sum := 0.0
		for i, p := range c.likely {
			sum += m.weights[i] * math.Log(p)
		}
		if got := c.prior * math.Exp(c.tempering*sum) / c.scale; math.Abs(sum-c.sum) > 1e-9 || math.Abs(got/c.answered-1) > 1e-9 {
			t.Errorf("%s: sum %g, chance %g; the sheet has %g and %g", c.name, sum, got, c.sum, c.answered)
		}
	}
	if m.alike(0) || m.aside() != "" {
		t.Error("no observation of these is alike under both causes")
	}
	m.causes[1].likely[2] = m.causes[0].likely[2]
	if want := "Alike under these causes, with v and P: observation 3 (0.60, 0.30)"; m.aside() != want || len(m.table().Rows) != 7 {
		t.Errorf("got %q over %d rows", m.aside(), len(m.table().Rows))
	}
	m.causes[1].likely[2] = 0.1
	if rows := m.table().Rows; len(rows) != 8 || rows[0][2].String() != "0.90" || rows[7][0].String() != "Chance a·e^(0.50·S)/Z, Z = 0.0200" {
		t.Errorf("matrix of %d rows: %v", len(rows), rows)
	}
}

// A sheet whose causes were not weighed over the same observations, or of any other
// kind, stays line by line.
func TestOtherSheetsAreNoMatrix(t *testing.T) {
	uneven := causesSheet(5)
	uneven.Lines = append(uneven.Lines[:6:6], uneven.Lines[7:]...)
	for _, s := range append(fixtureWorkings(), uneven, working.Sheet{ID: "empty"}) {
		if _, ok := weighingOf(&s); ok {
			t.Errorf("sheet %s was taken for a weighing", s.ID)
		}
	}
}

// The printed sheet of a finding holds the weighty part and says how much it leaves
// to the screen.
func TestFindingOnPaper(t *testing.T) {
	c := fixture()
	f := &c.Findings[0]
	for range 6 {
		f.Mechanism[0].For = append(f.Mechanism[0].For, ArgumentRow{Text: "a small thing", From: "seen", Shift: 0.2})
	}
	for i := range 8 {
		f.RuledOut = append(f.RuledOut, CauseRow{ID: fmt.Sprint("r", i), Name: fmt.Sprint("cause ", i), RuledOut: "it was seen to be otherwise"})
	}
	f.Options = append(f.Options, OptionRow{Remedy: "grind it off", Verdict: "does not fit", WhyNot: "there is no step"}, OptionRow{Remedy: "leave it", Verdict: "does not fit", WhyNot: "water gets in"})
	whole := strings.ReplaceAll(strings.Join(pdfOf(t, c, page.A4), " "), "\n", " ")
	for _, want := range []string{"and 5 of less weight", "and 5 more", "Grind it off: there is no step", "Not known, and it would tell: ", "Depth of the crack: no core was taken"} {
		if !strings.Contains(whole, want) {
			t.Errorf("the printed sheet lacks %q", want)
		}
	}
	html, err := HTML(c)
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(textOf(html), "A small thing"); n != 6 {
		t.Errorf("the HTML shows %d of 6 small arguments", n)
	}
}

func TestExactDoesNotRepeatThePlainWords(t *testing.T) {
	if got := beyond("No step was seen. The wheel uses 0.66 of it.", "no: No step was seen."); got != "The wheel uses 0.66 of it." {
		t.Errorf("got %q", got)
	}
	if !defines("Worse means here: wider by 0.1 mm.") || defines("Worse means here: wider. Missing: its width.") {
		t.Error("a definition is one that says nothing else")
	}
}

// The findings table and the terminal must give the cause the answer names, not the
// likeliest mechanism or trigger.
func TestBriefIsTheCauseTheAnswerNames(t *testing.T) {
	f := FindingSheet{Answer: "The likeliest cause is joint sawn too late: about 8 in 10. The saw came late.", Decided: true,
		Causes:    []CauseRow{{Name: "joint sawn too late", State: "leading", Chance: chance(0.77, 0.6, 0.9)}},
		Mechanism: []CauseRow{{Name: "cooling", State: "leading", Chance: chance(0.99, 0.96, 1)}},
		Triggers:  []CauseRow{{Name: "nothing special about this place", State: "leading", Chance: chance(0.98, 0.9, 1)}}}
	paper := newRefs(&Content{}, func(string) int { return 1 })
	if got := f.brief(paper); got != "Joint sawn too late" {
		t.Errorf("got %q", got)
	}
	f.Decided = false
	if got := f.brief(paper); !strings.HasPrefix(got, "The likeliest cause is") {
		t.Errorf("undecided: got %q", got)
	}
}
