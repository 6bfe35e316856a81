package plan

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"slabwright/source"
)

func TestCheckOfSoundSlab(t *testing.T) {
	for name, s := range map[string]Slab{"yard": yard(), "apron": apron()} {
		if bad := s.Check(); name == "apron" {
			// the apron of the relation tests has steel and wheels without trouble, too
			for _, p := range bad {
				if !strings.HasSuffix(p.Field, ".id") {
					t.Errorf("%s: %v", name, p)
				}
			}
		} else if len(bad) > 0 {
			t.Errorf("%s: %v", name, bad)
		}
	}
}

func TestCheckNamesEachProblem(t *testing.T) {
	pit := func(id string, shape []Point) Fixture { return Fixture{ID: id, Kind: Pit, Shape: shape, Opening: true} }
	for _, c := range []struct {
		name  string
		slab  Slab
		field string
		place *Point
		found string
	}{
		{"bow tie", Slab{Outline: []Point{{0, 0}, {4, 4}, {4, 0}, {0, 4}}}, "outline_m[2]", &Point{2, 2}, "meets the side"},
		{"even bow tie", Slab{Outline: []Point{{0, 0}, {4, 4}, {0, 4}, {4, 0}}}, "outline_m[2]", &Point{2, 2}, "meets the side"},
		{"spike", Slab{Outline: []Point{{0, 0}, {4, 0}, {4, 4}, {4, 1}, {0, 4}}}, "outline_m[2]", &Point{4, 4}, "meets"},
		{"touching itself", Slab{Outline: []Point{{0, 0}, {4, 0}, {4, 4}, {2, 0}, {0, 4}}}, "outline_m[2]", &Point{2, 0}, "meets"},
		{"two points", Slab{Outline: []Point{{0, 0}, {4, 0}}}, "outline_m", nil, "2 points"},
		{"nothing", Slab{}, "outline_m", nil, "0 points"},
		{"on one line", Slab{Outline: []Point{{0, 0}, {4, 0}, {9, 0}}}, "outline_m", &Point{0, 0}, "encloses"},
		{"map coordinates", Slab{Outline: []Point{{0, 0}, {445120, 0}, {4, 4}}}, "outline_m[1]", nil, "445120"},
		{"joint outside", Slab{Outline: box(0, 0, 6, 6), Joints: []Joint{joint("J1", Point{3, 0}, Point{3, 7})}}, "joints[0].path_m[1]", &Point{3, 7}, "1.00 m outside"},
		{"joint into a pit", Slab{Outline: box(0, 0, 6, 6), Fixtures: []Fixture{pit("F1", box(2, 2, 4, 4))}, Joints: []Joint{joint("J1", Point{0, 3}, Point{3, 3})}}, "joints[0].path_m[1]", &Point{3, 3}, "1.00 m outside"},
		{"joint over a notch", Slab{Outline: []Point{{0, 0}, {2, 0}, {2, 3}, {4, 3}, {4, 0}, {6, 0}, {6, 6}, {0, 6}}, Joints: []Joint{joint("J1", Point{0, 1}, Point{6, 1})}}, "joints[0].path_m[0]", nil, "leaves the slab"},
		{"joint without length", Slab{Outline: box(0, 0, 6, 6), Joints: []Joint{joint("J1", Point{3, 3}, Point{3, 3})}}, "joints[0].path_m", &Point{3, 3}, "no length"},
		{"joint twice", Slab{Outline: box(0, 0, 6, 6), Joints: []Joint{joint("J1", Point{3, 0}, Point{3, 6}), joint("J2", Point{3.005, 0}, Point{3.005, 6})}}, "joints[1].path_m", nil, "along joint J1"},
		{"joint of no kind", Slab{Outline: box(0, 0, 6, 6), Joints: []Joint{{ID: "J1", Kind: "wet", Path: []Point{{3, 0}, {3, 6}}}}}, "joints[0].kind", nil, "wet"},
		{"pit outside", Slab{Outline: box(0, 0, 6, 6), Fixtures: []Fixture{pit("F1", box(5, 5, 7, 7))}}, "fixtures[0].shape_m[1]", nil, "outside the outline"},
		{"pits over one another", Slab{Outline: box(0, 0, 6, 6), Fixtures: []Fixture{pit("F1", box(1, 1, 3, 3)), pit("F2", box(2, 2, 4, 4))}}, "fixtures[1].shape_m", nil, "1.00 m² of opening F1"},
		{"id twice", Slab{Outline: box(0, 0, 6, 6), Fixtures: []Fixture{pit("J1", box(1, 1, 2, 2))}, Joints: []Joint{joint("J1", Point{3, 0}, Point{3, 6})}}, "joints[0].id", nil, "also of fixtures[0]"},
		{"thickness in millimetres", Slab{Outline: box(0, 0, 6, 6), Thickness: fact(150)}, "thickness_m", nil, "150 m"},
		{"transfer of another word", Slab{Outline: box(0, 0, 6, 6), Joints: []Joint{{ID: "J1", Kind: Sawn, Path: []Point{{3, 0}, {3, 6}}, Transfer: yes("doweled")}}}, "joints[0].transfer", nil, "doweled"},
		{"range the wrong way round", Slab{Outline: box(0, 0, 6, 6), Thickness: &source.Fact{Value: 0.15, Low: value(0.16), High: value(0.14)}}, "thickness_m", nil, "range"},
		{"wheel path of nothing", Slab{Outline: box(0, 0, 6, 6), Wheels: []WheelPath{{ID: "W1", Width: 2}}}, "wheel_paths[0].path_m", nil, "without length"},
		{"pitch in millimetres", Slab{Outline: box(0, 0, 6, 6), Steel: []BarZone{{ID: "A1", PitchX: fact(200)}}}, "steel[0].pitch_x_m", nil, "200 m"},
	} {
		var found *Problem
		for _, p := range c.slab.Check() {
			if p.Field == c.field && strings.Contains(p.Found, c.found) {
				found = &p
				break
			}
		}
		switch {
		case found == nil:
			t.Errorf("%s: no problem at %s saying %q; got %v", c.name, c.field, c.found, c.slab.Check())
		case found.Want == "" || found.Mend == "":
			t.Errorf("%s: %v lacks what was wanted or how to mend it", c.name, found)
		case c.place != nil && (found.Place == nil || found.Place.To(*c.place) > 1e-9):
			t.Errorf("%s: place %v, want %v", c.name, found.Place, c.place)
		}
	}
}

func TestCheckFindsAllAtOnce(t *testing.T) {
	s := Slab{Outline: box(0, 0, 6, 6), Thickness: fact(-1), Joints: []Joint{joint("", Point{3, 0}, Point{3, 9}), {ID: "J2", Kind: Sawn}}}
	if bad := s.Check(); len(bad) != 4 {
		t.Errorf("got %d problems, want thickness, id, outside and length: %v", len(bad), bad)
	}
	if got := Under("slabs[0]", []Problem{{Field: "joints[3].path_m[1]"}})[0].Field; got != "slabs[0].joints[3].path_m[1]" {
		t.Errorf("field %s", got)
	}
}

func TestPanelsOfUnusableOutline(t *testing.T) {
	if _, err := (Slab{Outline: []Point{{0, 0}, {4, 4}, {4, 0}, {0, 4}}}).Panels(); err == nil || !strings.Contains(err.Error(), "(2.000, 2.000)") {
		t.Errorf("error %v must name the crossing", err)
	}
	if _, err := (Slab{Outline: box(0, 0, 2, 2), Fixtures: []Fixture{{ID: "F", Kind: Pit, Shape: box(0, 0, 2, 2), Opening: true}}}).Panels(); err == nil {
		t.Error("an opening over the whole slab leaves no panel")
	}
}

func TestInside(t *testing.T) {
	s := yard()
	for _, c := range []struct {
		p    Point
		tol  float64
		want bool
	}{
		{Point{1, 1}, 0, true}, {Point{0, 0}, 0, true}, {Point{-0.01, 1}, 0, false}, {Point{-0.01, 1}, 0.02, true},
		{Point{8.5, 5.5}, 0, false}, {Point{8.01, 5.5}, 0.02, true}, {Point{20, 20}, 0.5, false},
	} {
		if got := s.Inside(c.p, c.tol); got != c.want {
			t.Errorf("%v within %g: %v, want %v", c.p, c.tol, got, c.want)
		}
	}
	if i, out := s.Outside([]Point{{1, 1}, {30, 1}}, 0.1); !out || i != 1 {
		t.Errorf("first point outside is %d, %v; want 1", i, out)
	}
}

// The names in a job file are fixed.
func TestJSONNames(t *testing.T) {
	text, err := json.Marshal(apron())
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{`"outline_m":[[0,0],`, `"shape_m"`, `"path_m"`, `"pitch_x_m"`, `"angle_deg"`, `"first_m":[0.1,0.1]`, `"wheel_paths"`, `"width_m"`, `"length_m"`, `"isolated"`} {
		if !strings.Contains(string(text), name) {
			t.Errorf("no %s in %s", name, text)
		}
	}
	var back Slab
	if err := json.Unmarshal(text, &back); err != nil || len(back.Joints) != 2 || back.Outline[2] != (Point{10, 4}) {
		t.Errorf("read back %+v, %v", back, err)
	}
	if math.IsNaN(back.Steel[0].PitchX.Value) {
		t.Error("pitch lost")
	}
}
