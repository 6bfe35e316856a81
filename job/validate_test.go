package job

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"time"

	"slabwright/plan"
	"slabwright/site"
	"slabwright/source"
	"slabwright/walk"
)

func fact(v float64) *source.Fact { return &source.Fact{Value: v, Known: source.Measured} }

func word(s string) *source.Choice { return &source.Choice{Value: s, Known: source.Recorded} }

func at(text string) *time.Time {
	t, err := time.Parse(time.RFC3339, text)
	if err != nil {
		panic(err)
	}
	return &t
}

// sound is a small job without an error, for tests to spoil.
func sound() *Job {
	area := []plan.Point{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 5}, {X: 0, Y: 5}}
	return &Job{
		Version: Version, ID: "yard", Title: "Yard", Place: site.Place{Name: "Kiel", Zone: "Europe/Berlin"},
		Parties: []site.Party{{ID: "gang", Name: "Gang", Does: []site.Role{site.Placer}}},
		Slabs: []plan.Slab{{ID: "A", Name: "A", Outline: area, Thickness: fact(0.15),
			Joints: []plan.Joint{{ID: "J1", Kind: plan.Sawn, Path: []plan.Point{{X: 5, Y: 0}, {X: 5, Y: 5}}}}}},
		Mixes: []site.Mix{{ID: "m", WaterCement: fact(0.5), Strength: fact(30)}},
		Pours: []site.Pour{{ID: "P", Name: "P", Area: area, Mix: "m", Start: at("2026-06-18T06:00:00Z"), End: at("2026-06-18T09:00:00Z"),
			FinishStart: at("2026-06-18T08:00:00Z"), FinishEnd: at("2026-06-18T12:00:00Z"),
			Trucks: []site.Truck{{Ticket: "T1", Batched: at("2026-06-18T05:20:00Z"), Arrived: at("2026-06-18T05:50:00Z"), Started: at("2026-06-18T06:00:00Z"), Finished: at("2026-06-18T06:30:00Z"), AskedBy: "gang"}},
			Saw:    []site.Cut{{Joint: "J1", Start: at("2026-06-18T16:00:00Z"), Depth: fact(0.04)}},
			Cure:   []site.Cover{{Kind: "compound", On: at("2026-06-18T12:30:00Z")}}}},
		Walks: []walk.Walk{{ID: "W", Date: *at("2026-09-01T08:00:00Z"), By: "me",
			Findings: []walk.Finding{{ID: "F1", Kind: walk.Crack, Lines: [][]plan.Point{{{X: 2, Y: 0}, {X: 2, Y: 5}}}, FirstSeen: at("2026-06-19T08:00:00Z")}}}},
	}
}

func TestSoundJobHasNoErrors(t *testing.T) {
	for _, p := range sound().Validate() {
		if p.Level != Unknown {
			t.Error(p)
		}
	}
}

// Each case spoils one thing and asks for the one problem that names it.
func TestValidate(t *testing.T) {
	for _, c := range []struct {
		name        string
		spoil       func(*Job)
		level       Level
		code, field string
		has         string // words of the problem's line
	}{
		{"w/c 5", func(j *Job) { j.Mixes[0].WaterCement.Value = 5 }, Error, "range", "mixes[0].water_cement", "0.2 to 1.5|Did you mean 0.5?"},
		{"w/c in %", func(j *Job) { j.Mixes[0].WaterCement.Value = 50 }, Error, "range", "mixes[0].water_cement", "Did you mean 0.5?|50 % as a share"},
		{"1500 mm for 150", func(j *Job) { j.Slabs[0].Thickness.Value = 1500 }, Error, "range", "slabs[0].thickness_m", "Did you mean 0.15?"},
		{"1.5 for 0.15", func(j *Job) { j.Slabs[0].Thickness.Value = 1.5 }, Error, "range", "slabs[0].thickness_m", "0.04 to 1|Did you mean 0.15?"},
		{"150 mm in metres", func(j *Job) { j.Slabs[0].Thickness.Value = 150 }, Error, "range", "slabs[0].thickness_m", "Did you mean 0.15? That is 150 mm in m."},
		{"6 inches", func(j *Job) { j.Slabs[0].Thickness.Value = 6.0 }, Error, "range", "slabs[0].thickness_m", "0.1524? That is 6 in"},
		{"psi for MPa", func(j *Job) { j.Mixes[0].Strength.Value = 4000 }, Error, "range", "mixes[0].strength_MPa", "27.58? That is 4000 psi in MPa"},
		{"F for C", func(j *Job) { j.Pours[0].Concrete = fact(77) }, Error, "range", "pours[0].concrete_C", "Did you mean 25?|77 °F"},
		{"percent for share", func(j *Job) { j.Mixes[0].FlyAsh = fact(30) }, Error, "range", "mixes[0].fly_ash_share", "Did you mean 0.3?"},
		{"pci for MN/m3", func(j *Job) { j.Ground.Support = fact(400) }, Warning, "unusual", "ground.support_MN_m3", "108.6? That is 400 pci in MN/m3"},
		{"crack width in mm", func(j *Job) { j.Walks[0].Findings[0].Width = fact(0.4) }, Error, "range", "walks[0].findings[0].width_m", "Did you mean 0.0004? That is 0.4 mm in m."},
		{"NaN thickness", func(j *Job) { j.Slabs[0].Thickness.Value = nan }, Error, "range", "slabs[0].thickness_m", "not known m; 0.04 to 1 m"},
		{"expansion in microstrain", func(j *Job) { j.Mixes[0].Expansion = fact(10) }, Error, "range", "mixes[0].expansion_per_K", "1.000·10⁻⁶ to 5.000·10⁻⁵ 1/K|10 µε/K"},
		{"zero thickness", func(j *Job) { j.Slabs[0].Thickness.Value = 0 }, Error, "range", "slabs[0].thickness_m", "leave it out"},
		{"low above high", func(j *Job) {
			a, b := 0.2, 0.1
			j.Slabs[0].Thickness.Low, j.Slabs[0].Thickness.High = &a, &b
		}, Error, "range-order", "slabs[0].thickness_m", "swapped"},
		{"value above high", func(j *Job) { a := 0.14; j.Slabs[0].Thickness.High = &a }, Error, "range-order", "slabs[0].thickness_m", "high 0.14"},
		{"range too wide", func(j *Job) { a := 3.0; j.Slabs[0].Thickness.High = &a }, Error, "range", "slabs[0].thickness_m", "Narrow the range"},
		{"known", func(j *Job) { j.Slabs[0].Thickness.Known = "mesured" }, Error, "known-word", "slabs[0].thickness_m.known", `Did you mean "measured"?`},
		{"known missing", func(j *Job) { j.Slabs[0].Thickness.Known = "" }, Error, "known-word", "slabs[0].thickness_m.known", "one of: measured, recorded, assumed, default"},
		{"choice", func(j *Job) { j.Slabs[0].Joints[0].Transfer = word("doweled") }, Error, "choice-word", "slabs[0].joints[0].transfer", `Did you mean "dowelled"?`},
		{"open choice", func(j *Job) { j.Mixes[0].CementType = word("CEM II/a") }, Warning, "choice-word", "mixes[0].cement_type", `"CEM II/A"`},
		{"kind", func(j *Job) { j.Walks[0].Findings[0].Kind = "crak" }, Error, "choice-word", "walks[0].findings[0].kind", `Did you mean "crack"?`},
		{"seen state", func(j *Job) {
			j.Walks[0].Findings[0].Seen = map[string]source.Choice{"depth": *word("part_top")}
		}, Error, "choice-word", "walks[0].findings[0].seen.depth", `Did you mean "part-top"?`},
		{"seen variable", func(j *Job) {
			j.Walks[0].Findings[0].Seen = map[string]source.Choice{"agregate": *word("through")}
		}, Error, "choice-word", "walks[0].findings[0].seen.agregate", `Did you mean "aggregate"?`},
		{"code", func(j *Job) { j.Basis.Code = "EN 1992" }, Error, "choice-word", "basis.code", "EN 1992-1-1"},
		{"zone", func(j *Job) { j.Place.Zone = "Europe/Berln" }, Error, "zone", "place.zone", `Did you mean "Europe/Berlin"?`},
		{"no zone", func(j *Job) { j.Place.Zone = "" }, Error, "zone", "place.zone", "IANA"},
		{"no title", func(j *Job) { j.Title = " " }, Error, "required", "title", "client"},
		{"no slab", func(j *Job) { j.Slabs = nil }, Error, "required", "slabs", "outline"},
		{"crossing outline", func(j *Job) {
			j.Slabs[0].Outline = []plan.Point{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 2, Y: 5}, {X: 9, Y: 5}}
		}, Error, "shape", "slabs[0].outline_m[3]", "the side from point 3 meets the side from point 1|at (5.29, 2.94) m|wrong order"},
		{"joint outside", func(j *Job) { j.Slabs[0].Joints[0].Path[1].Y = 7 }, Error, "shape", "slabs[0].joints[0].path_m[1]", "7"},
		{"finding outside", func(j *Job) { j.Walks[0].Findings[0].Lines[0][1].Y = 6.2 }, Error, "outside", "walks[0].findings[0].lines_m[0][1]",
			"finding F1 lies outside|at (2.00, 6.20) m, 1.20 m beyond the edge from (10.00, 5.00) to (0.00, 5.00) of slab A"},
		{"finding in mm", func(j *Job) { j.Walks[0].Findings[0].Lines[0][1] = plan.Point{X: 2000, Y: 4500} }, Error, "outside", "walks[0].findings[0].lines_m[0][1]", "did you mean [2, 4.5]?"},
		{"x and y swapped", func(j *Job) { j.Walks[0].Findings[0].Lines[0][0] = plan.Point{X: 4, Y: 9} }, Error, "outside", "walks[0].findings[0].lines_m[0][0]", "Did you mean [9, 4]?"},
		{"pour outside", func(j *Job) { j.Pours[0].Area = []plan.Point{{X: 0, Y: 0}, {X: 12, Y: 0}, {X: 12, Y: 5}} }, Error, "outside", "pours[0].area_m[1]", "pour P lies outside"},
		{"truck outside", func(j *Job) { j.Pours[0].Trucks[0].Area = []plan.Point{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 1, Y: -2}} }, Error, "outside", "pours[0].trucks[0].area_m[2]", "truck T1 lies outside"},
		{"area of two points", func(j *Job) {
			j.Walks[0].Unseen = []walk.Unseen{{ID: "U", Area: []plan.Point{{X: 1, Y: 1}, {X: 2, Y: 2}}}}
		}, Error, "shape", "walks[0].could_not_see[0].area_m", "three or more"},
		{"no place", func(j *Job) { j.Walks[0].Findings[0].Lines = nil }, Warning, "no-place", "walks[0].findings[0]", "no place on the plan"},
		{"batched after arrival", func(j *Job) { j.Pours[0].Trucks[0].Batched = at("2026-06-18T05:55:00Z") }, Error, "time-order", "pours[0].trucks[0].arrived", "arrival of truck T1|Thu 07:50|batching"},
		{"unloaded before batched", func(j *Job) {
			tr := &j.Pours[0].Trucks[0]
			tr.Arrived, tr.Started = nil, nil
			tr.Finished = at("2026-06-18T05:00:00Z")
		}, Error, "time-order", "pours[0].trucks[0].finished", "end of unloading"},
		{"saw before pour", func(j *Job) { j.Pours[0].Saw[0].Start = at("2026-06-18T04:00:00Z") }, Error, "time-order", "pours[0].saw[0].start", "the cut of joint J1"},
		{"saw on the day before", func(j *Job) { j.Pours[0].Saw[0].Start = at("2026-06-17T16:00:00Z") }, Error, "time-order", "pours[0].saw[0].start", "the day after, 2026-06-18T16:00:00Z"},
		{"cure before finish", func(j *Job) { j.Pours[0].Cure[0].On = at("2026-06-18T07:30:00Z") }, Error, "time-order", "pours[0].cure[0].on", "compound going on"},
		{"cure off before on", func(j *Job) { j.Pours[0].Cure[0].Off = at("2026-06-18T12:00:00Z") }, Error, "time-order", "pours[0].cure[0].off", "coming off"},
		{"walk before pour", func(j *Job) { j.Walks[0].Date = *at("2025-09-01T08:00:00Z") }, Error, "time-order", "walks[0].date", "walk W"},
		{"seen before pour", func(j *Job) { j.Walks[0].Findings[0].FirstSeen = at("2026-06-01T08:00:00Z") }, Error, "time-order", "walks[0].findings[0].first_seen", "first sight of finding F1"},
		{"seen after walk", func(j *Job) { j.Walks[0].Findings[0].FirstSeen = at("2026-10-01T08:00:00Z") }, Error, "time-order", "walks[0].date", "walk W"},
		{"pour ends before start", func(j *Job) { j.Pours[0].End = at("2026-06-18T05:00:00Z") }, Error, "time-order", "pours[0].end", "the end of pour P"},
		{"long pour", func(j *Job) { j.Pours[0].FinishEnd = nil; j.Pours[0].End = at("2026-06-20T05:00:00Z") }, Warning, "time-span", "pours[0].end", "at most 36 h"},
		{"saw weeks late", func(j *Job) { j.Pours[0].Saw[0].Start = at("2026-07-18T16:00:00Z") }, Warning, "time-span", "pours[0].saw[0].start", "usual"},
		{"party twice", func(j *Job) { j.Parties = append(j.Parties, j.Parties[0]) }, Error, "id-twice", "parties[1].id", "also of parties[0].id"},
		{"truck twice", func(j *Job) { j.Pours[0].Trucks = append(j.Pours[0].Trucks, j.Pours[0].Trucks[0]) }, Error, "id-twice", "pours[0].trucks[1].ticket", "Rename"},
		{"no id", func(j *Job) { j.Walks[0].Findings[0].ID = "" }, Error, "id-missing", "walks[0].findings[0].id", "without an id"},
		{"joint twice", func(j *Job) { s := &j.Slabs[0]; s.Joints = append(s.Joints, s.Joints[0]) }, Error, "shape", "slabs[0].joints[1].id", "J1"},
		{"joint twice in two slabs", func(j *Job) {
			s := j.Slabs[0]
			s.ID = "B"
			j.Slabs = append(j.Slabs, s)
		}, Error, "id-twice", "slabs[1].joints[0].id", "J1"},
		{"mix unknown", func(j *Job) { j.Pours[0].Mix = "n" }, Error, "id-unknown", "pours[0].mix", "one of: m"},
		{"joint unknown", func(j *Job) { j.Pours[0].Saw[0].Joint = "J11" }, Error, "id-unknown", "pours[0].saw[0].joint", `Did you mean "J1"?`},
		{"party unknown", func(j *Job) { j.Pours[0].Trucks[0].AskedBy = "gnag" }, Error, "id-unknown", "pours[0].trucks[0].asked_by", `Did you mean "gang"?`},
		{"finding's joint", func(j *Job) { j.Walks[0].Findings[0].Joint = "X" }, Error, "id-unknown", "walks[0].findings[0].joint", "no joint"},
		{"cause unknown", func(j *Job) {
			j.Pours[0].Departures = []site.Departure{{ID: "D", What: "x", Known: source.Recorded, Bears: []string{"late-cutt"}}}
		}, Error, "id-unknown", "pours[0].departures[0].bears_on[0]", `Did you mean "late-cut"?`},
		{"departure's joint", func(j *Job) {
			j.Departures = []site.Departure{{ID: "D", What: "x", Known: source.Recorded, Joints: []string{"J1", "J9"}}}
		}, Error, "id-unknown", "departures[0].joints[1]", `Did you mean "J1"?`},
		{"departure outside", func(j *Job) {
			j.Pours[0].Departures = []site.Departure{{ID: "D", What: "x", Known: source.Recorded, Area: []plan.Point{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 1, Y: -2}}}}
		}, Error, "outside", "pours[0].departures[0].area_m[2]", "departure D lies outside"},
		{"departure twice", func(j *Job) {
			j.Departures = []site.Departure{{ID: "D", What: "x", Known: source.Recorded}}
			j.Pours[0].Departures = j.Departures
		}, Error, "id-twice", "departures[0].id", "also of pours[0].departures[0].id"},
		{"departure a year late", func(j *Job) {
			j.Pours[0].Departures = []site.Departure{{ID: "D", What: "x", Known: source.Recorded, At: at("2027-06-18T06:00:00Z")}}
		}, Warning, "time-span", "pours[0].departures[0].at", "departure D"},
		{"departure known", func(j *Job) { j.Pours[0].Departures = []site.Departure{{ID: "D", What: "x", Known: "seen"}} }, Error, "known-word", "pours[0].departures[0].known", "one of"},
		{"weather path", func(j *Job) { j.Pours[0].Weather = "../../etc/day.csv" }, Error, "path", "pours[0].weather", "day.csv"},
		{"weather path back", func(j *Job) { j.Pours[0].Weather = `..\day.csv` }, Error, "path", "pours[0].weather", "day.csv"},
		{"weather path within", func(j *Job) { j.Pours[0].Weather = `a/../../b.csv` }, Error, "path", "pours[0].weather", "b.csv"},
		{"weather root", func(j *Job) { j.Pours[0].Weather = "/var/day.csv" }, Error, "path", "pours[0].weather", "day.csv"},
		{"photo drive", func(j *Job) { j.Walks[0].Findings[0].Photos = []string{"C:/p.jpg"} }, Error, "path", "walks[0].findings[0].photos[0]", "colon"},
		{"thickness absent", func(j *Job) { j.Slabs[0].Thickness = nil }, Unknown, "not-known", "slabs[0].thickness_m", "not known: Slab thickness (A)|so these answers are not given: replay of the pour, cut window, curl"},
		{"mix absent", func(j *Job) { j.Pours[0].Mix = "" }, Unknown, "not-known", "pours[0].mix", "not known: Mix of the pour (P)|ticket"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := sound()
			c.spoil(j)
			all := j.Validate()
			var found *Problem
			for i, p := range all {
				if p.Field == c.field && p.Code == c.code && found == nil {
					found = &all[i]
				}
				if c.level == Unknown && p.Level == Error {
					t.Errorf("an error for what is only not known: %s", p)
				}
			}
			if found == nil {
				t.Fatalf("no %s at %s in %v", c.code, c.field, all)
			}
			if found.Level != c.level {
				t.Errorf("level %s, want %s", found.Level, c.level)
			}
			for _, s := range strings.Split(c.has, "|") {
				if !strings.Contains(found.String(), s) {
					t.Errorf("%q does not say %q", found, s)
				}
			}
		})
	}
}

// All problems come at once, each field once.
func TestValidateSaysAllAtOnce(t *testing.T) {
	j := sound()
	j.Mixes[0].WaterCement.Value = 5
	j.Slabs[0].Thickness.Value = 1500
	j.Pours[0].Mix = "n"
	j.Place.Zone = "Mars"
	j.Walks[0].Findings[0].Lines[0][1].Y = 60
	var fields []string
	for _, p := range Errors(j.Validate()) {
		fields = append(fields, p.Field)
	}
	want := "slabs[0].thickness_m mixes[0].water_cement place.zone pours[0].mix walks[0].findings[0].lines_m[0][1]"
	if got := strings.Join(fields, " "); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

func TestProblemNamesLine(t *testing.T) {
	j := decoded(t, strings.Replace(handWritten, `"altitude_m": { "value": 12.0`, `"altitude_m": { "value": 12000`, 1))
	for _, p := range j.Validate() {
		if p.Field == "place.altitude_m" {
			if p.Line != 4 {
				t.Errorf("line %d, want 4", p.Line)
			}
			return
		}
	}
	t.Error("an altitude of 12 km went unnoticed")
}

func TestWeatherGapOverPour(t *testing.T) {
	hours := func(skip func(h int) bool) string {
		var b strings.Builder
		b.WriteString("# station: Kiel\ntime,air_C,humidity (%),wind_m_s\n")
		start := at("2026-06-17T00:00:00Z")
		for h := range 24 * 7 {
			if !skip(h) {
				fmt.Fprintf(&b, "%s,%d,%d,%d\n", start.Add(time.Duration(h)*time.Hour).Format(time.RFC3339), 15+h%24/2, 70-h%24, 2+h%5)
			}
		}
		return b.String()
	}
	for _, c := range []struct {
		name, file string
		level      Level
		code       string
	}{
		{"whole", hours(func(int) bool { return false }), "", ""},
		{"two hours missing", hours(func(h int) bool { return h == 32 || h == 33 }), "", ""},
		{"six hours of the pour day missing", hours(func(h int) bool { return h > 32 && h < 39 }), Error, "weather-gap"},
		{"six hours two days later missing", hours(func(h int) bool { return h > 70 && h < 77 }), Warning, "weather-gap"},
		{"ends on the pour day", hours(func(h int) bool { return h > 40 }), Error, "weather-gap"},
		{"stuck thermometer", regexp.MustCompile(`Z,\d+,`).ReplaceAllString(hours(func(int) bool { return false }), "Z,20,"), Warning, "weather-doubt"},
		{"not a table", "hello\n", Error, "weather-read"},
		{"not there", "", Error, "weather-missing"},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			j := sound()
			j.Pours[0].Weather = "day.csv"
			if err := j.Save(dir); err != nil {
				t.Fatal(err)
			}
			if c.file != "" {
				os.Mkdir(filepath.Join(dir, WeatherDir), 0o755)
				if err := os.WriteFile(filepath.Join(dir, WeatherDir, "day.csv"), []byte(c.file), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			var got []Problem
			for _, p := range j.Validate() {
				if strings.HasPrefix(p.Code, "weather") {
					got = append(got, p)
				}
			}
			if c.code == "" && len(got) > 0 {
				t.Errorf("got %v", got)
			}
			if c.code != "" && (len(got) == 0 || got[0].Code != c.code || got[0].Level != c.level) {
				t.Errorf("got %v, want %s %s", got, c.level, c.code)
			}
		})
	}
}

// Every number of the types has a range, every word a list, and no row is stale.
func TestTablesCoverTheTypes(t *testing.T) {
	plain := map[string]bool{"version": true, "basis.seed": true}
	rowsUsed := map[string]bool{}
	patterns(reflect.TypeFor[Job](), "", func(pattern string, ty reflect.Type) {
		switch {
		case ty == reflect.TypeFor[source.Fact]() || ty.Kind() == reflect.Float64 || ty.Kind() == reflect.Int:
			if _, ok := ranges[pattern]; !ok && !plain[pattern] {
				t.Errorf("ranges.csv has no %s", pattern)
			}
		case ty == reflect.TypeFor[source.Choice]():
			if _, ok := choices[pattern]; !ok && !strings.HasPrefix(pattern, seenPattern) {
				t.Errorf("choices.csv has no %s", pattern)
			}
		}
		rowsUsed[pattern] = true
	})
	for f := range ranges {
		if !rowsUsed[f] {
			t.Errorf("ranges.csv: no field %s", f)
		}
	}
	for f := range choices {
		if !rowsUsed[f] {
			t.Errorf("choices.csv: no field %s", f)
		}
	}
	for _, n := range needs {
		if !rowsUsed[n.Field] {
			t.Errorf("needs.csv: no field %s", n.Field)
		}
	}
	for f := range references {
		if !rowsUsed[f] {
			t.Errorf("references.csv: no field %s", f)
		}
	}
	for i, kinds := range [][]string{choices["walks[].findings[].kind"].Words, choices["walks[].none_seen[].kinds[]"].Words} {
		if len(kinds) != len(walk.Kinds) {
			t.Errorf("kinds list %d has %d words, the types %d", i, len(kinds), len(walk.Kinds))
		}
		for k, kind := range walk.Kinds {
			if kinds[k] != string(kind) {
				t.Errorf("kind %q stands for %q", kinds[k], kind)
			}
		}
	}
	for k, role := range site.Roles {
		if choices["parties[].does[]"].Words[k] != string(role) {
			t.Errorf("role %q missing", role)
		}
	}
}

// Every way of typing in ranges.csv is a unit of its quantity, and lands in the
// usual range for at least one value, or it would be of no use.
func TestMendsAreOfUse(t *testing.T) {
	for _, r := range Ranges() {
		for _, typed := range r.TypedAs {
			one := r
			one.TypedAs = []string{typed}
			landed := false
			for v := 1e-7; v < 1e8 && !landed; v *= 1.1 {
				_, _, landed = one.mend(v)
			}
			if !landed {
				t.Errorf("%s: nothing typed as %s lands in %g to %g", r.Field, typed, r.UsualMin, r.UsualMax)
			}
		}
	}
}
