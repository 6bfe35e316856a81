package dxf

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// file of entities and blocks, groups parted by blanks: "0 LINE 8 edge 10 0 ...".
func made(header, blocks, entities string) []byte {
	text := "0 SECTION 2 HEADER " + header + " 0 ENDSEC 0 SECTION 2 BLOCKS " + blocks + " 0 ENDSEC 0 SECTION 2 ENTITIES " + entities + " 0 ENDSEC 0 EOF"
	return []byte(strings.ReplaceAll(strings.Join(strings.Fields(text), "\n"), "_", " ") + "\n")
}

func mustRead(t *testing.T, data []byte, o Options) *Drawing {
	t.Helper()
	d, err := Read(data, o)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

const metres = "9 $INSUNITS 70 6"

func TestBulges(t *testing.T) {
	// A square of 2 with a half circle out of its right side, anticlockwise: 4 + π/2.
	light := "0 LWPOLYLINE 8 a 90 4 70 1 10 0 20 0 10 2 20 0 42 1 10 2 20 2 10 0 20 2"
	old := "0 POLYLINE 8 a 66 1 70 1 0 VERTEX 10 0 20 0 0 VERTEX 10 2 20 0 42 1 0 VERTEX 10 2 20 2 0 VERTEX 10 0 20 2 0 SEQEND"
	for _, entities := range []string{light, old} {
		d := mustRead(t, made(metres, "", entities), Options{Chord: 1e-7})
		if len(d.Lines) != 1 || !d.Lines[0].Closed {
			t.Fatalf("got %+v", d.Lines)
		}
		if got, want := d.Lines[0].Area(), 4+math.Pi/2; math.Abs(got-want) > 1e-5 {
			t.Errorf("area %.6f, want %.6f", got, want)
		}
		if _, high, _ := d.Box(); math.Abs(high.X-3) > 1e-6 {
			t.Errorf("the half circle reaches x = %.6f, want 3", high.X)
		}
	}
}

// No chord is further from its arc than the tolerance, and no finer than it need be.
func TestChordTolerance(t *testing.T) {
	for _, tol := range []float64{1e-2, 1e-3, 1e-4} {
		d := mustRead(t, made(metres, "", "0 CIRCLE 8 a 10 3 20 4 40 5"), Options{Chord: tol})
		points := d.Lines[0].Points
		worst := 0.0
		for i, p := range points {
			q := points[(i+1)%len(points)]
			worst = math.Max(worst, 5-Point{(p.X + q.X) / 2, (p.Y + q.Y) / 2}.To(Point{3, 4}))
		}
		if worst > tol*(1+1e-9) || worst < tol/2 {
			t.Errorf("tolerance %g m: chords lie up to %g m from the circle", tol, worst)
		}
	}
}

// The tolerance holds on the ground, also where a block is drawn a hundred times as
// large.
func TestChordToleranceInBlocks(t *testing.T) {
	d := mustRead(t, made(metres, "0 BLOCK 2 c 10 0 20 0 0 CIRCLE 8 0 10 0 20 0 40 0.05 0 ENDBLK",
		"0 INSERT 2 c 8 columns 10 0 20 0 41 100 42 100"), Options{Chord: 1e-3})
	want := math.Pi * 25
	if got := d.Lines[0].Area(); got < want*(1-2e-3) || got > want {
		t.Errorf("area %.4f, want just below %.4f", got, want)
	}
	if d.Lines[0].Layer != "columns" {
		t.Errorf("what lies on layer 0 of a block is on %q, want the layer of the insertion", d.Lines[0].Layer)
	}
}

// Without a unit the chords follow the size of each curve.
func TestChordsWithoutUnit(t *testing.T) {
	small := mustRead(t, made("", "", "0 CIRCLE 8 a 10 0 20 0 40 0.01"), Options{})
	large := mustRead(t, made("", "", "0 CIRCLE 8 a 10 0 20 0 40 5000"), Options{})
	if n, m := len(small.Lines[0].Points), len(large.Lines[0].Points); n != m || n < 48 {
		t.Errorf("%d and %d chords, want alike", n, m)
	}
}

func TestInsertPlaces(t *testing.T) {
	// The block's base is (1, 1); its line runs 2 along x from there.
	block := "0 BLOCK 2 b 10 1 20 1 0 LINE 8 e 10 1 20 1 11 3 21 1 0 ENDBLK"
	cases := []struct {
		name, insert string
		from, to     Point
	}{
		{"moved", "10 5 20 6", Point{5, 6}, Point{7, 6}},
		{"turned", "10 5 20 6 50 90", Point{5, 6}, Point{5, 8}},
		{"scaled", "10 5 20 6 41 3 42 2", Point{5, 6}, Point{11, 6}},
		{"mirrored", "10 5 20 6 41 -1", Point{5, 6}, Point{3, 6}},
		{"from below", "10 5 20 6 210 0 220 0 230 -1", Point{-5, 6}, Point{-7, 6}},
	}
	for _, c := range cases {
		d := mustRead(t, made(metres, block, "0 INSERT 2 B 8 x "+c.insert), Options{})
		got := d.Lines[0].Points
		if got[0].To(c.from) > 1e-12 || got[1].To(c.to) > 1e-12 {
			t.Errorf("%s: %v, want %v to %v", c.name, got, c.from, c.to)
		}
	}
	// Two columns 4 apart, three rows 10 apart, turned by 90°: columns go up, rows to the left.
	d := mustRead(t, made(metres, block, "0 INSERT 2 b 8 x 10 0 20 0 50 90 70 2 71 3 44 4 45 10"), Options{})
	if len(d.Lines) != 6 {
		t.Fatalf("%d lines of an array of 2 by 3", len(d.Lines))
	}
	if got, want := d.Lines[5].Points[0], (Point{-20, 4}); got.To(want) > 1e-12 {
		t.Errorf("last of the array at %v, want %v", got, want)
	}
}

func TestLeavesOutAndSaysSo(t *testing.T) {
	d := mustRead(t, made(metres, "", `0 LINE 8 a 10 0 20 0 11 1 21 0 0 HATCH 8 a 0 HATCH 8 a 0 3DFACE 8 a 0 POINT 8 a 10 0 20 0
		0 LINE 8 a 67 1 10 0 20 0 11 1 21 0 0 LINE 8 a 60 1 10 0 20 0 11 1 21 0 0 LINE 8 a 10 2 20 2 11 2 21 2 0 INSERT 2 nowhere 10 0 20 0
		0 POLYLINE 8 a 70 64 66 1 0 VERTEX 10 0 20 0 0 SEQEND`), Options{})
	if len(d.Lines) != 1 {
		t.Errorf("%d lines, want 1", len(d.Lines))
	}
	got := map[string]int{}
	for _, s := range d.Skipped {
		got[s.Kind+": "+s.Why] = s.Count
	}
	for _, want := range []string{"HATCH", "3DFACE", "POINT", "paper space", "not to be seen", "no length", "not in the file", "mesh of faces"} {
		found := false
		for k, n := range got {
			found = found || strings.Contains(k, want) && n == 1 || want == "HATCH" && strings.HasPrefix(k, want) && n == 2
		}
		if !found {
			t.Errorf("%q is not among what was left out: %v", want, got)
		}
	}
}

func TestBrokenFilesNameThePlace(t *testing.T) {
	line := func(n int) string { return fmt.Sprintf("line %d", n) }
	cases := []struct{ name, data, want, code string }{
		{"no number", "0\nSECTION\n2\nENTITIES\n0\nLINE\n8\na\n10\nabc\n20\n0\n11\n1\n21\n1\n0\nENDSEC\n0\nEOF\n", line(10), "group code 10"},
		{"no number at all", "0\nSECTION\n2\nENTITIES\n0\nLINE\n8\na\n10\nNaN\n20\n0\n11\n1\n21\n1\n0\nENDSEC\n0\nEOF\n", line(10), "group code 10"},
		{"missing y", "0\nSECTION\n2\nENTITIES\n0\nLINE\n8\na\n10\n1\n11\n1\n21\n1\n0\nENDSEC\n0\nEOF\n", line(6), "group code 20"},
		{"no code", "0\nSECTION\n2\nENTITIES\n0\nLINE\nlayer\na\n", line(7), "a whole number"},
		{"cut short", "0\nSECTION\n2\nENTITIES\n0\nLINE\n8", line(7), "cut short"},
		{"circle of no radius", "0\nSECTION\n2\nENTITIES\n0\nCIRCLE\n8\na\n10\n0\n20\n0\n40\n-2\n0\nENDSEC\n0\nEOF\n", line(6), "group code 40"},
		{"holds itself", string(made("", "0 BLOCK 2 b 10 0 20 0 0 INSERT 2 b 10 0 20 0 0 ENDBLK", "0 INSERT 2 b 10 0 20 0")), "line", "holds itself"},
		{"spline", string(made("", "", "0 SPLINE 8 a 71 3 40 0 10 0 20 0 10 1 20 1")), "line", "control points"},
		{"huge array", string(made("", "0 BLOCK 2 b 0 ENDBLK", "0 INSERT 2 b 10 0 20 0 70 30000")), "line", "group code 70"},
	}
	for _, c := range cases {
		_, err := Read([]byte(c.data), Options{})
		var e *Error
		if !errors.As(err, &e) || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), c.code) {
			t.Errorf("%s: %v; want %q and %q", c.name, err, c.want, c.code)
		}
	}
	for data, want := range map[string]string{"": "empty", "AC1032\x00\x00": "DWG", "%PDF-1.4": "PDF", "PK\x03\x04": "zip", "\xff\xfe0\x00": "UTF-16", "0\nLINE\n": "no section"} {
		if _, err := Read([]byte(data), Options{}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", data, err, want)
		}
	}
	binary, err := os.ReadFile(filepath.Join("testdata", "drawings", "e-binary-r2000.dxf"))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := Read(binary[:5001], Options{}); err == nil || !strings.Contains(err.Error(), "byte ") {
		t.Errorf("binary file cut short: %v", err)
	}
}

func TestEndsWithoutMark(t *testing.T) {
	d := mustRead(t, []byte("0\r\nSECTION\r\n2\r\nENTITIES\r\n0\r\nLINE\r\n8\r\na\r\n10\r\n0\r\n20\r\n0\r\n11\r\n1\r\n21\r\n0\r\n"), Options{})
	if len(d.Lines) != 1 || len(d.Notes) != 1 || !strings.Contains(d.Notes[0], "cut short") {
		t.Errorf("%+v", d)
	}
}

func TestLetters(t *testing.T) {
	text := func(version, page, words string) []byte {
		return []byte("0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\n" + version + "\n9\n$DWGCODEPAGE\n3\n" + page + "\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nTEXT\n8\na\n10\n0\n20\n0\n40\n1\n1\n" + words + "\n0\nENDSEC\n0\nEOF\n")
	}
	cases := []struct{ version, page, bytes, want string }{
		{"AC1015", "ANSI_1252", "Fu\xdfboden", "Fußboden"},
		{"AC1015", "ANSI_1251", "\xcf\xeb\xe8\xf2\xe0", "Плита"},
		{"AC1009", "dos850", "Stra\xe1e", "Straße"},
		{"AC1015", "ANSI_1250", "Ko\x9aice", "Košice"},
		{"AC1027", "ANSI_1252", "Fußboden", "Fußboden"},
		{"AC1009", "ANSI_1252", `Fu\U+00DFboden 20%%d %%c12 %%p5 100%%% %%223`, "Fußboden 20° ⌀12 ±5 100% ß"},
		{"AC1009", "ANSI_1252", "a^ b", "a^b"},
	}
	for _, c := range cases {
		d := mustRead(t, text(c.version, c.page, c.bytes), Options{})
		if got := d.Texts[0].Words; got != c.want {
			t.Errorf("%s %s %q: %q, want %q (%s)", c.version, c.page, c.bytes, got, c.want, d.Letters)
		}
	}
	d := mustRead(t, text("AC1015", "ANSI_932", "\x83\x58"), Options{})
	if !strings.Contains(d.Letters, "ANSI_932") {
		t.Errorf("a code page that is not known goes unsaid: %q", d.Letters)
	}
	if got := undressed(`{\fArial|b1;Slab\P{\H2.5;150}}\~mm \U+00B2`); got != "Slab\n150 mm \\U+00B2" {
		t.Errorf("undressed: %q", got)
	}
}

// A binary file of release 12 has group codes of one byte.
func TestBinaryOfOldRelease(t *testing.T) {
	data := sentinel + "\x00SECTION\x00\x02ENTITIES\x00\x00LINE\x00\x08edge\x00" +
		"\x0a\x00\x00\x00\x00\x00\x00\x00\x00" + "\x14\x00\x00\x00\x00\x00\x00\x00\x00" +
		"\x0b\x00\x00\x00\x00\x00\x00\x24\x40" + "\x15\x00\x00\x00\x00\x00\x00\x00\x00" + // 10.0
		"\xff\xe8\x03\x00" + "\x00ENDSEC\x00\x00EOF\x00"
	d := mustRead(t, []byte(data), Options{Unit: Metre})
	if len(d.Lines) != 1 || d.Lines[0].Length() != 10 || d.Lines[0].Layer != "edge" || !d.Binary {
		t.Errorf("%+v", d)
	}
}

func TestUnits(t *testing.T) {
	for word, want := range map[string]float64{"mm": 0.001, " M ": 1, "in": 0.0254, "ft": 0.3048, "cm": 0.01} {
		u, err := ParseUnit(word)
		if got, ok := u.Metres(); err != nil || !ok || got != want {
			t.Errorf("%q: %g, %v", word, got, err)
		}
	}
	if _, err := ParseUnit("pixel"); err == nil || !strings.Contains(err.Error(), "mm, cm, m, in or ft") {
		t.Errorf("%v", err)
	}
	if d := mustRead(t, made("9 $INSUNITS 70 99", "", ""), Options{}); d.Unit != None || len(d.Notes) != 1 {
		t.Errorf("unit 99 read as %v, notes %v", d.Unit, d.Notes)
	}
}

func FuzzRead(f *testing.F) {
	names, err := filepath.Glob(filepath.Join("testdata", "drawings", "*.dxf"))
	if err != nil || len(names) < 17 {
		f.Fatalf("%d drawings: %v", len(names), err)
	}
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add(made(metres, "0 BLOCK 2 b 10 0 20 0 0 ARC 8 0 10 0 20 0 40 1 50 0 51 90 0 ENDBLK", "0 INSERT 2 b 10 0 20 0 41 2 70 3 71 2 44 1 45 1"))
	f.Add(made("", "", "0 SPLINE 8 a 70 1 71 2 40 0 40 0 40 0 40 1 40 1 40 1 10 0 20 0 10 1 20 1 10 2 20 0 41 1 41 2 41 1"))
	f.Fuzz(func(t *testing.T, data []byte) {
		d, err := Read(data, Options{})
		if err != nil {
			if strings.TrimSpace(err.Error()) == "" {
				t.Error("an error without words")
			}
			return
		}
		for _, l := range d.Lines {
			for _, p := range l.Points {
				if math.IsNaN(p.X) || math.IsNaN(p.Y) || math.IsInf(p.X, 0) || math.IsInf(p.Y, 0) {
					t.Fatalf("%s at line %d has no place: %v", l.Kind, l.At, p)
				}
			}
			if len(l.Points) < 2 || l.Closed && len(l.Points) < 3 {
				t.Fatalf("%s at line %d: %d points, closed %v", l.Kind, l.At, len(l.Points), l.Closed)
			}
		}
		if len(d.Lines) < 2000 {
			Join(d.Lines, 1e-6)
		}
	})
}
