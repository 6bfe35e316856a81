package source

import (
	"math"
	"strings"
	"testing"
	"testing/fstest"
)

const head = "id,quantity,inputs,expected,unit,tol,kind,known,note\n"

func TestReadRowsRefuses(t *testing.T) {
	for _, c := range []struct{ name, text, has string }{
		{"no source", head + "a,q,x=1,2,m,0.1,rel,computed,\n", `"# source: ..."`},
		{"source not first words", "# about: x\n" + head + "a,q,x=1,2,m,0.1,rel,computed,\n", `"# source: ..."`},
		{"wrong head", "# source: s\nid,quantity\na,q\n", "head must be"},
		{"no rows", "# source: s\n" + head, "with rows below"},
		{"expected is a word", "# source: s\n" + head + "a,q,x=1,two,m,0.1,rel,computed,\n", `row a: expected "two"`},
		{"tolerance negative", "# source: s\n" + head + "a,q,x=1,2,m,-0.1,rel,computed,\n", "row a: tolerance"},
		{"tolerance a word", "# source: s\n" + head + "a,q,x=1,2,m,small,rel,computed,\n", "row a: tolerance"},
		{"kind", "# source: s\n" + head + "a,q,x=1,2,m,0.1,percent,computed,\n", "neither rel nor abs"},
		{"known empty", "# source: s\n" + head + "a,q,x=1,2,m,0.1,rel,,\n", "known is empty"},
		{"id twice", "# source: s\n" + head + "a,q,x=1,2,m,0.1,rel,c,\na,q,x=2,2,m,0.1,rel,c,\n", "id used twice"},
		{"ragged", "# source: s\n" + head + "a,q,x=1\n", "t.csv"},
	} {
		rows, err := ReadRows(strings.NewReader(c.text), "t.csv")
		if err == nil || !strings.Contains(err.Error(), c.has) {
			t.Errorf("%s: got %v, %v; want an error with %q", c.name, rows, err, c.has)
		}
	}
}

func TestReadRowsKeepsEveryColumn(t *testing.T) {
	rows, err := ReadRows(strings.NewReader("# source: A book, table 3\n# read: page 12\n"+head+
		"r1,area,a=2 b=3,6,m2,0.01,abs,\"published, read\",checked twice\n"), "book_t3.csv")
	if err != nil || len(rows) != 1 {
		t.Fatal(rows, err)
	}
	want := Row{File: "book_t3.csv", Source: "A book, table 3", ID: "r1", Quantity: "area", Inputs: "a=2 b=3", Expected: 6,
		Unit: "m2", Tol: 0.01, Known: "published, read", Note: "checked twice"}
	if rows[0] != want {
		t.Errorf("got %+v\nwant %+v", rows[0], want)
	}
}

// A table with every way to fail beside one row that holds: nothing is left out,
// and each failed row says why.
func TestProve(t *testing.T) {
	files := fstest.MapFS{"p/a.csv": {Data: []byte("# source: s\n" + head +
		"holds,area,a=2 b=3,6,m2,0,abs,c,\n" +
		"just within,area,a=2 b=3,6.5,m2,0.5,abs,c,\n" +
		"relative,area,a=2 b=3,5,m2,0.2,rel,c,\n" +
		"negative expected,area,a=-2 b=3,-5,m2,0.2,rel,c,\n" +
		"off,area,a=2 b=3,7,m2,0.5,abs,c,\n" +
		"no function,volume,a=2,6,m3,0,abs,c,\n" +
		"no input,area,a=2,6,m2,0,abs,c,\n" +
		"bad number,area,a=2 b=x,6,m2,0,abs,c,\n" +
		"bad pair,area,a=2 b,6,m2,0,abs,c,\n" +
		"no word,named,a=2,6,m2,0,abs,c,\n" +
		"not a number,nan,a=2,6,m2,1e9,abs,c,\n" +
		"fallback,or,a=2,14,m2,0,abs,c,\n")},
		"p/b.csv":  {Data: []byte("# source: other\n" + head + "x,area,a=1 b=1,1,m2,0,abs,c,\n")},
		"p/no.txt": {Data: []byte("not a table")}}
	results := Prove(files, "p", map[string]Func{
		"area":  func(in Inputs) float64 { return in.Num("a") * in.Num("b") },
		"named": func(in Inputs) float64 { return float64(len(in.Word("name"))) },
		"nan":   func(Inputs) float64 { return math.NaN() },
		"or":    func(in Inputs) float64 { return in.Num("a") * in.NumOr("b", 7) },
	})
	want := []struct {
		id, fail string
		ok       bool
	}{{"holds", "", true}, {"just within", "", true}, {"relative", "", true}, {"negative expected", "", true}, {"off", "", false},
		{"no function", "no function answers", false}, {"no input", "no input b", false}, {"bad number", "not a number: x", false},
		{"bad pair", "input b is not name=value", false}, {"no word", "no input name", false}, {"not a number", "", false}, {"fallback", "", true}, {"x", "", true}}
	if len(results) != len(want) {
		t.Fatalf("%d results, want %d", len(results), len(want))
	}
	for i, w := range want {
		r := results[i]
		if r.ID != w.id || r.OK != w.ok || !strings.Contains(r.Fail, w.fail) || w.fail == "" && r.Fail != "" {
			t.Errorf("got %s ok=%v fail=%q, want %s ok=%v %q", r.ID, r.OK, r.Fail, w.id, w.ok, w.fail)
		}
	}
	if r := results[4]; r.Off != -1 || !strings.Contains(r.String(), "got 6, expected 7 m2, off by -1, tolerance 0.5 abs") {
		t.Errorf("a failed row must be judged from its line alone: %s", r)
	}
	if s := results[5].String(); !strings.Contains(s, "a.csv no function volume(a=2): no function answers this quantity") {
		t.Errorf("got %s", s)
	}
}

// A mistake of the programmer within a quantity is not taken for a failed row.
func TestProvePassesPanicsOn(t *testing.T) {
	files := fstest.MapFS{"p/a.csv": {Data: []byte("# source: s\n" + head + "r,q,a=1,1,m,0,abs,c,\n")}}
	defer func() {
		if p := recover(); p != "ours: wrong" {
			t.Errorf("recovered %v", p)
		}
	}()
	Prove(files, "p", map[string]Func{"q": func(Inputs) float64 { panic("ours: wrong") }})
}

func TestProveWithoutTablesPanics(t *testing.T) {
	for name, files := range map[string]fstest.MapFS{"no files": {}, "bad table": {"p/a.csv": {Data: []byte("x\n")}}} {
		func() {
			defer func() {
				if p, ok := recover().(string); !ok || !strings.HasPrefix(p, "source: ") {
					t.Errorf("%s: recovered %v", name, p)
				}
			}()
			Prove(files, "p", nil)
		}()
	}
}

func TestFactBounds(t *testing.T) {
	a, b := 1.0, 3.0
	for _, c := range []struct {
		fact      Fact
		low, high float64
	}{
		{Fact{Value: 2}, 2, 2}, {Fact{Value: 2, Low: &a}, 1, 2}, {Fact{Value: 2, High: &b}, 2, 3}, {Fact{Value: 2, Low: &a, High: &b}, 1, 3},
	} {
		if low, high := c.fact.Bounds(); low != c.low || high != c.high {
			t.Errorf("%+v: got %g to %g, want %g to %g", c.fact, low, high, c.low, c.high)
		}
	}
}

func TestNotKnownIsNotZero(t *testing.T) {
	var f *Fact
	if f.Or(7) != 7 || !math.IsNaN(f.OrNaN()) {
		t.Error("an unknown fact must give the fallback, or NaN")
	}
	zero := &Fact{Value: 0}
	if zero.Or(7) != 0 || zero.OrNaN() != 0 {
		t.Error("a known nought is an answer")
	}
	var c *Choice
	if c.Is("") || c.Or("no") != "no" {
		t.Error("an unknown choice is no word")
	}
	if c = (&Choice{Value: "yes"}); !c.Is("yes") || c.Is("no") || c.Or("no") != "yes" {
		t.Error("a known choice is its word")
	}
}

func TestCitation(t *testing.T) {
	for _, c := range []struct {
		cite Citation
		want string
	}{
		{Cite("en1992", "6.2.1").As(Read), "EN 1992-1-1:2004, 6.2.1"},
		{Cite("en1992", "6.2.1"), "EN 1992-1-1:2004, 6.2.1 (seen in another code or excerpt)"},
		{Cite("practice", ""), "Common practice"},
		{Cite("own", ""), "slabwright's own judgement"},
	} {
		if got := c.cite.String(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
	defer func() {
		if p, ok := recover().(string); !ok || !strings.Contains(p, `no work "nobody1900"`) {
			t.Errorf("recovered %v", p)
		}
	}()
	Cite("nobody1900", "")
}

// Every work has a title and one of the states of knowledge.
func TestWorksTable(t *testing.T) {
	states := map[How]bool{Read: true, Seen: true, Memory: true, Practice: true, Own: true}
	works := Works()
	if len(works) < 30 {
		t.Fatalf("only %d works", len(works))
	}
	for key, w := range works {
		if w.Work != key || w.Title == "" || !states[w.How] || strings.ContainsAny(key, " ,") {
			t.Errorf("works.csv: %s: %+v", key, w)
		}
	}
	works["own"] = Citation{}
	if Works()["own"].Title == "" {
		t.Error("the table can be changed from outside")
	}
}

func TestWorksTableTwicePanics(t *testing.T) {
	defer func() {
		if p, ok := recover().(string); !ok || !strings.Contains(p, "names a twice") {
			t.Errorf("recovered %v", p)
		}
	}()
	readWorks("key,title,how\na,A,our own\na,B,our own\n")
}
