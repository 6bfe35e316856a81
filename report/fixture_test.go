package report

import (
	"math"
	"time"

	"slabwright/causes"
	"slabwright/plan"
	"slabwright/source"
	"slabwright/walk"
	"slabwright/working"
)

// zone of the fixture's site; two hours ahead of UTC in summer.
const fixtureZone = "Europe/Madrid"

func at(day, hour, minute int) time.Time {
	return time.Date(2025, 6, day, hour-2, minute, 0, 0, time.UTC)
}

func when(day, hour, minute int) *time.Time { t := at(day, hour, minute); return &t }

func measured(v float64) *source.Fact {
	return &source.Fact{Value: v, Known: source.Measured, By: "inspector"}
}

func measuredBetween(v, low, high float64) *source.Fact {
	return &source.Fact{Value: v, Low: &low, High: &high, Known: source.Measured}
}

func recorded(word string) *source.Choice {
	return &source.Choice{Value: word, Known: source.Recorded}
}

func some(v float64) *float64 { return &v }

func rect(x0, y0, x1, y1 float64) []plan.Point {
	return []plan.Point{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
}

func path(xy ...float64) []plan.Point {
	var p []plan.Point
	for i := 0; i+1 < len(xy); i += 2 {
		p = append(p, plan.Point{X: xy[i], Y: xy[i+1]})
	}
	return p
}

// fixtureSlab is an L-shaped apron of 350 m² in three strips with a pit, a drain
// and a building along one end.
func fixtureSlab() plan.Slab {
	return plan.Slab{
		ID: "A", Name: "Apron A",
		Outline:   path(0, 0, 24, 0, 24, 10, 11, 10, 11, 20, 0, 20),
		Thickness: &source.Fact{Value: 0.15, Known: source.Recorded},
		Bearing:   &source.Fact{Value: 32, Known: source.Recorded},
		Fixtures: []plan.Fixture{
			{ID: "X1", Name: "pit", Kind: plan.Pit, Shape: rect(8, 6.5, 9.5, 8), Opening: true, Isolated: recorded("no")},
			{ID: "X2", Name: "drain", Kind: plan.Drain, Shape: rect(18.5, 2.2, 23, 2.6), Opening: true, Isolated: recorded("yes")},
			{ID: "X3", Name: "hall", Kind: plan.Building, Shape: path(0, 20.25, 11, 20.25), Isolated: recorded("yes")},
			{ID: "X4", Name: "old slab", Kind: plan.OldSlab, Shape: rect(-2, 0, -0.1, 5)},
		},
		Joints: []plan.Joint{
			{ID: "J1", Kind: plan.Formed, Path: path(0, 5, 24, 5), Transfer: recorded("dowelled")},
			{ID: "J2", Kind: plan.Formed, Path: path(0, 10, 11, 10), Transfer: recorded("dowelled")},
			{ID: "J3", Kind: plan.Sawn, Path: path(5.5, 0, 5.5, 20)},
			{ID: "J4", Kind: plan.Sawn, Path: path(11, 0, 11, 10)},
			{ID: "J5", Kind: plan.Sawn, Path: path(17.5, 0, 17.5, 10)},
			{ID: "J6", Kind: plan.Sawn, Path: path(0, 15, 11, 15)},
			{ID: "J7", Kind: plan.Isolation, Path: path(0, 20, 11, 20)},
		},
	}
}

func fixtureDowels() []DowelBar {
	var bars []DowelBar
	for x := 0.3; x < 24; x += 0.4 {
		bars = append(bars, DowelBar{"J1", plan.Point{X: x, Y: 4.75}, plan.Point{X: x, Y: 5.25}})
	}
	for x := 0.3; x < 11; x += 0.4 {
		bars = append(bars, DowelBar{"J2", plan.Point{X: x, Y: 9.75}, plan.Point{X: x, Y: 10.25}})
	}
	return bars
}

func fixtureBars() [][2]plan.Point {
	var lines [][2]plan.Point
	for x := 0.2; x < 24; x += 0.4 {
		top := 10.0
		if x < 11 {
			top = 20
		}
		lines = append(lines, [2]plan.Point{{X: x, Y: 0}, {X: x, Y: top}})
	}
	return lines
}

func chance(p, low, high float64) Chance {
	return Chance{P: p, Low: low, High: high, About: causes.About(p)}
}

func fixtureWorkings() []working.Sheet {
	uno := func(tc, ta, r, v float64) float64 {
		return 5 * (math.Pow(tc+18, 2.5) - r*math.Pow(ta+18, 2.5)) * (v + 4) * 1e-6
	}
	drying := working.Sheet{ID: "drying-strip-1", Title: "Drying rate of strip 1 at 14:00", Basis: []string{"wind brought from 10 m down to 0.5 m"}}
	e := uno(33, 34, 0.28, 17)
	drying.Add(working.New("E", "drying rate at the surface", "5·((Tc + 18)^2.5 − r·(Ta + 18)^2.5)·(V + 4)·10^−6", e, "kg/m²h", source.Cite("uno1998", "Eq. (6)"),
		working.In("Tc", 33, "°C", "concrete surface"), working.In("Ta", 34, "°C", "air"), working.In("r", 0.28, "", "relative humidity"), working.In("V", 17, "km/h", "wind at the slab")).
		Beside("Menzel's form", e*1.04, source.Cite("menzel1954", ""), ""))
	window := working.Sheet{ID: "window-strip-1", Title: "Cut window of strip 1"}
	window.Add(
		working.New("t_o", "first hour with a clean edge", "t_set + Δt", 8.4, "h", source.Cite("own", "edge strength"), working.In("t_set", 5.9, "h", "final set"), working.In("Δt", 2.5, "h", "from set to edge strength")),
		working.New("t_c", "hour at which the risk passes the chosen one", "t_peak − Δ", 13.2, "h", source.Cite("own", "samples"), working.In("t_peak", 15.2, "h", "greatest tension"), working.In("Δ", 2, "h", "margin by the samples")).
			Beside("free-edge bound", 17.5, source.Cite("mechanics", "friction drag"), "The bound leaves out the cold night, which closes the window sooner."))
	movement := working.Sheet{ID: "movement", Title: "Movement still to come"}
	movement.Add(working.New("w", "opening still to come", "(ε_sh + α_c·ΔT)·L", (2.6e-4+10e-6*28)*5.6, "m", source.Cite("mechanics", "free movement of a panel"),
		working.In("ε_sh", 2.6e-4, "", "shrinkage to come"), working.In("α_c", 10e-6, "1/K", "expansion"), working.In("ΔT", 28, "K", "yearly swing"), working.In("L", 5.6, "m", "mean panel")))
	corner := working.Sheet{ID: "corner-F1", Title: "F1 and the inside corner"}
	corner.Add(working.New("d", "from the crack's end to the corner", "√(Δx² + Δy²)", 0.05, "m", source.Cite("mechanics", "plane distance"), working.In("Δx", 0.04, "m", ""), working.In("Δy", 0.03, "m", "")))
	weights := working.Sheet{ID: "causes-F1", Title: "Weights of the causes of F1"}
	weights.Add(working.New("P", "weight of restraint at a corner", "k/(1 + k)", 0.72, "", source.Cite("own", "bands of the evidence"), working.In("k", 2.57, "", "odds after the evidence")))
	return []working.Sheet{drying, window, movement, corner, weights}
}

func fixtureCauses() (mechanism, triggers, out []CauseRow) {
	mechanism = []CauseRow{
		{ID: "early-thermal", Name: "early cooling and drying held by friction and the corner", Layer: "mechanism",
			Plain: "The slab tried to shorten in its first cool night and could not", Exact: "Tension from cooling and autogenous shrinkage reached the tensile strength before any joint was cut.",
			Chance: chance(0.72, 0.55, 0.84), State: "leading",
			For: []ArgumentRow{{Text: "it starts 50 mm from the inside corner", From: "plan", Known: "measured", Shift: 6.2, Working: "corner-F1"},
				{Text: "it was seen the morning after, before any wheel", From: "seen", Known: "recorded", Shift: 4.1},
				{Text: "the replay has tension pass strength here at Thu 02:40", From: "weather", Known: "assumed", Shift: 3.3, Working: "window-strip-1"}},
			Against: []ArgumentRow{{Text: "aggregate is not broken through along the upper half", From: "seen", Known: "measured", Shift: -1.8}},
			Missing: []string{"depth of the crack: no core was taken"}, Sources: []string{"EN 1992-1-1, 3.1"}, Working: "causes-F1"},
		{ID: "drying", Name: "drying shrinkage over the first months", Layer: "mechanism", Plain: "The slab dried and shortened over weeks", Chance: chance(0.18, 0.08, 0.3), State: "possible",
			For:     []ArgumentRow{{Text: "w/c rose to 0.55 on two trucks", From: "pour", Known: "recorded", Shift: 1.2}},
			Against: []ArgumentRow{{Text: "it was there the morning after", From: "seen", Known: "recorded", Shift: -7.5}}, Working: "causes-F1"},
		{ID: "curl", Name: "wheel on a curled corner", Layer: "mechanism", Plain: "A wheel broke a corner that had lost its support", Chance: chance(0.06, 0.02, 0.11), State: "unlikely",
			Against: []ArgumentRow{{Text: "no wheel had been on the slab", From: "seen", Known: "recorded", Shift: -9}}, Working: "causes-F1"},
	}
	triggers = []CauseRow{{ID: "late-cut", Name: "joints cut too late", Layer: "trigger", Plain: "The saw came after the slab had found its own joints", Chance: chance(0.78, 0.6, 0.9), State: "leading",
		For: []ArgumentRow{{Text: "J4 was cut 17 h after placing; the window had closed at 13 h", From: "pour", Known: "recorded", Shift: 5.6, Working: "window-strip-1"}}, Missing: []string{"who decided to wait for the morning"}, Working: "causes-F1"}}
	out = []CauseRow{{ID: "asr", Name: "alkali-aggregate reaction", Layer: "mechanism", RuledOut: "the slab was one day old", Chance: chance(0, 0, 0.01), State: "ruled out", Working: "causes-F1"},
		{ID: "settlement", Name: "ground giving way", Layer: "mechanism", RuledOut: "no step across the crack and the base was rolled and tested", Chance: chance(0.01, 0, 0.02), State: "ruled out", Working: "causes-F1"}}
	return
}

func fixtureOptions() []OptionRow {
	return []OptionRow{
		{Remedy: "watch", Verdict: "recommended", Why: "the crack still moves with the seasons and carries no wheel yet", Quantity: "1 mark", Life: "to the next walk", Disruption: "none", Cost: "1 visit, 240 EUR", When: "by Fri 30 January 2026", Sources: []string{"common practice"}},
		{Remedy: "fill with a soft filler", Verdict: "fits", Why: "keeps water and grit out; the filler must take 35 % strain", Quantity: "3.75 m", Life: "4 to 7 years", Disruption: "one lane, half a day", Cost: "61 EUR", When: "in a cold week, when it is widest"},
		{Remedy: "stitch with bars", Verdict: "refused", Why: "would hold the two sides together", WhyNot: "locks a crack that still has 2.9 mm to move; the next one would open beside it", Quantity: "8 bars", Life: "–", Disruption: "two days", Cost: "no rate given", When: "–"},
	}
}

func fixtureHands() []HandRow {
	return []HandRow{
		{Party: "Design office", Role: "designer", Cause: "no joint at the inside corner", Departed: "no", Caused: "in part", Control: "yes, before the pour", Action: "draw a joint to the inside corner, or trimmer bars across it", Moment: "when the joints were laid out"},
		{Party: "Saw crew", Role: "saw crew", Cause: "joints cut late", Departed: "yes: 17 h, 12 h planned", Caused: "likely", Control: "in part: the saw was sent away", Action: "cut from 19:30 with the wet saw", Moment: "Wed 18 June, 19:30 to Thu 00:10"},
		{Party: "Site management", Role: "inspector", Cause: "joints cut late", Departed: "not known", Caused: "likely", Control: "yes", Action: "keep the saw on site for the evening", Moment: "Wed 18 June, before 18:00"},
	}
}

var fixtureSeen = []struct {
	id, title, place, answer string
	kind                     walk.Kind
	lines                    [][]plan.Point
	area                     []plan.Point
	joint                    string
	width                    *source.Fact
	at                       plan.Point
}{
	{"F1", "Crack, 3.8 m, panel P4", "from the inside corner at (11.0, 10.0) into strip 2", "Early cooling held by the corner, joints cut too late", walk.Crack, [][]plan.Point{path(11.03, 9.96, 11.9, 9.1, 12.4, 8.2, 13.6, 7.2)}, nil, "", measuredBetween(0.0006, 0.0005, 0.0008), plan.Point{X: 12.4, Y: 8.2}},
	{"F2", "Crack, 1.9 m, panel P3", "from the pit corner at (9.5, 8.0)", "Pit held the slab: no isolation round it", walk.Crack, [][]plan.Point{path(9.5, 8, 10.1, 8.8, 10.9, 9.6)}, nil, "", measured(0.0004), plan.Point{X: 10.2, Y: 8.9}},
	{"F3", "Crack, 5.0 m, panel P5", "0.45 m beside joint J4, along it", "The slab cracked beside the joint before it was cut", walk.Crack, [][]plan.Point{path(11.45, 0, 11.5, 1.6, 11.38, 3.2, 11.5, 5)}, nil, "", measured(0.0009), plan.Point{X: 11.45, Y: 2.4}},
	{"F4", "Joint J5 not opened, 5.0 m", "joint J5 in strip 1", "Its work is done by the crack beside J4", walk.JointNotOpen, [][]plan.Point{path(17.5, 0.2, 17.5, 4.8)}, nil, "J5", nil, plan.Point{X: 17.5, Y: 3.4}},
	{"F5", "Map cracking, 4.8 m²", "middle of panel P9", "Surface dried too fast, skin deep", walk.MapCracking, nil, rect(1.2, 11.5, 4, 13.2), "", nil, plan.Point{X: 2.6, Y: 13.2}},
	{"F6", "Short cracks, 5 pieces, panel P10", "strip 3, across the wind", "Plastic shrinkage in the first hours", walk.ShortCracks, [][]plan.Point{path(6.6, 11.2, 7.5, 11.9), path(7.2, 11, 8.1, 11.7), path(7.9, 11.2, 8.7, 11.8), path(6.9, 12.2, 7.6, 12.8), path(8, 12.3, 8.9, 13)}, nil, "", measured(0.0015), plan.Point{X: 7.7, Y: 12}},
	{"F7", "Parallel cracks over bars, panel P1", "four lines 0.40 m apart", "Concrete settled over bars with little cover", walk.ParallelSet, [][]plan.Point{path(2.2, 1, 2.2, 2.6), path(2.6, 0.9, 2.6, 2.7), path(3, 1, 3, 2.4), path(3.4, 1.1, 3.4, 2.5)}, nil, "", measured(0.0002), plan.Point{X: 2.8, Y: 2.7}},
	{"F8", "Corner break, panel P7", "outer corner at (24.0, 0.0)", "Cannot tell yet: curl and wheel, or ground", walk.CornerBreak, [][]plan.Point{path(22.9, 0, 23.4, 0.7, 24, 1.1)}, nil, "", measured(0.0012), plan.Point{X: 23.3, Y: 0.6}},
	{"F9", "Joint spall, 0.3 m, J3", "joint J3 at (5.5, 7.1)", "Wheel on an edge without filler", walk.JointSpall, nil, rect(5.45, 7, 5.62, 7.3), "J3", nil, plan.Point{X: 5.5, Y: 7.1}},
	{"F10", "Ravelled edge, 2.2 m, J6", "joint J6 from (6.0, 15.0)", "Cut too soon", walk.RavelledEdge, [][]plan.Point{path(6, 15.03, 8.2, 15.03)}, nil, "J6", nil, plan.Point{X: 7, Y: 15}},
	{"F11", "Dusting, 6 m²", "panel P12 by the hall", "Surface finished with water on it", walk.Dusting, nil, rect(7, 17, 10, 19), "", nil, plan.Point{X: 8.5, Y: 17}},
	{"F12", "Curled edge, 6 mm over 2 m, J1", "joint J1 near (15, 5)", "Top dries, bottom stays wet", walk.Curl, [][]plan.Point{path(13.5, 5.05, 16.5, 5.05)}, nil, "J1", nil, plan.Point{X: 15, Y: 5.05}},
}

func fixtureFindings() []FindingSheet {
	var all []FindingSheet
	for i, s := range fixtureSeen {
		mechanism, triggers, out := fixtureCauses()
		f := FindingSheet{
			Finding: walk.Finding{ID: s.id, Kind: s.kind, Lines: s.lines, Area: s.area, Joint: s.joint, Width: s.width, FirstSeen: when(19, 7, 30), SeenBy: "saw crew",
				Seen: map[string]source.Choice{"aggregate": {Value: "round it", Known: source.Measured}, "through_depth": {Value: "not visible", Known: source.Measured, By: "inspector"}}},
			Walk: "W1", Title: s.title, Place: s.place, At: s.at, Answer: s.answer, Decided: s.id != "F8",
			Relations: []RelationRow{{What: "starts at inside corner of", Text: "outline, 50" + thin + "mm off", Working: "corner-F1"}, {What: "runs at", Text: "47° to the edge"}},
			Causes:    triggers[:1], Mechanism: mechanism, Triggers: triggers, RuledOut: out,
			NextTests:  []TestRow{{Name: "core over the crack, 50 mm", Splits: []string{"early cooling", "drying over months"}, Gain: 0.62, CostClass: 2, Time: "half a day", Outcomes: []string{"through the depth: early cooling 8 in 10", "upper third only: drying 5 in 10"}, Caution: "heating pipes and bars below: find them first"}},
			Structural: Answer{Key: "structural", Plain: "no", Exact: "the sides hold together across it; a wheel of 40 kN is carried as before", Chance: &Chance{P: 0.9, Low: 0.8, High: 0.96, About: "about 9 in 10"}},
			Worse:      Answer{Key: "worse", Plain: "it opens and closes with the seasons", Chance: &Chance{P: 0.7, Low: 0.5, High: 0.85, About: "about 7 in 10"}, Workings: []string{"movement"}},
			Matters:    Answer{Key: "matters", Plain: "for water and grit, not for load"},
			Options:    fixtureOptions(), Hands: fixtureHands()[:2], Workings: []string{"causes-F1", "corner-F1"},
		}
		if i > 0 {
			f.Hands = nil
		}
		if s.id == "F8" {
			f.Unexplained = []string{"the crack is 1.2 mm wide with no step"}
		}
		all = append(all, f)
	}
	return all
}

func fixturePour(id, name string, day, hour int) PourDay {
	start := at(day, hour, 0)
	end := start.Add(4 * time.Hour)
	p := PourDay{ID: id, Name: name, Start: start, End: &end, Weather: "airport record, 11 km away, wind brought down from 10 m", Workings: []string{"drying-strip-1", "window-strip-1"}}
	for h := range 48 {
		t := start.Truncate(time.Hour).Add(time.Duration(h) * time.Hour)
		local := float64((hour + h) % 24)
		warm := math.Cos((local - 15) / 24 * 2 * math.Pi)
		rate := math.Max(0.05, 0.55+0.75*warm)
		p.Drying = append(p.Drying, DryingHour{Time: t, Air: 24 + 9*warm, Humidity: 0.45 - 0.2*warm, Wind: 3 + 2*warm, Sun: math.Max(0, 850*warm), Concrete: 29 + 4*warm, Uno: rate, UnoUS: rate * 0.98, Menzel: rate * 1.06})
		hyd := 11 * math.Exp(-math.Pow((float64(h)-11)/8, 2))
		share := 1.25 / (1 + math.Exp(-(float64(h)-13.5)/1.9))
		p.Column = append(p.Column, ColumnHour{Time: t, Hours: float64(h), Top: 25 + 7*warm + hyd, Middle: 26 + 4*warm + 1.1*hyd, Bottom: 26 + 1.5*warm + 0.9*hyd,
			Strength: 28 * (1 - math.Exp(-float64(h)/30)), Tensile: 2.2 * (1 - math.Exp(-float64(h)/24)), Modulus: 28000 * (1 - math.Exp(-float64(h)/14)),
			Share: share, ShareLow: share * 0.72, ShareHigh: share * 1.3})
	}
	later := func(h float64) *time.Time { t := start.Add(time.Duration(h * float64(time.Hour))); return &t }
	p.InitialSet, p.FinalSet, p.FilmGone = later(4.1), later(5.9), later(2.3)
	p.Window = Window{Saw: "wet", Opens: later(8.4), OpensLow: later(7.6), OpensHigh: later(9.5), Best: later(9.5), Closes: later(13.2), ClosesLow: later(11.8), ClosesHigh: later(15.1), Why: "opens at edge strength, closes as the slab cools in the night", Working: "window-strip-1"}
	p.Early = &Window{Saw: "early-entry", Opens: later(5.6), OpensLow: later(5), OpensHigh: later(6.4), Best: later(6.5), Closes: later(13.2), Why: "needs less edge strength", Working: "window-strip-1"}
	c := chance(0.81, 0.64, 0.92)
	p.Cuts = []CutRow{{Joint: "J3", At: *later(16.5), Hours: 16.5, State: "missed", Chance: &c, Depth: some(0.038), DepthShare: some(0.25), Edge: "clean", Opened: "yes", By: "saw crew"},
		{Joint: "J4", At: *later(17), Hours: 17, State: "missed", Chance: &c, Depth: some(0.04), DepthShare: some(0.27), Edge: "clean", Opened: "no", By: "saw crew"},
		{Joint: "J5", At: *later(17.6), Hours: 17.6, State: "missed", Depth: some(0.036), DepthShare: some(0.24), Edge: "clean", Opened: "no"}}
	p.Events = []Event{{*later(0), "truck", "first truck"}, {*later(0.7), "truck", "truck 2"}, {*later(1.4), "truck", "truck 3"}, {*later(2.2), "departure", "water added, truck 3"}, {*later(4.1), "set", "initial set"},
		{*later(4.3), "finish", "floating begins"}, {*later(5.9), "set", "final set"}, {*later(6.2), "cure", "compound on"}, {*later(10), "departure", "saw sent away"}, {*later(16.5), "cut", "cut J3"}, {*later(17), "cut", "cut J4"}, {*later(17.6), "cut", "cut J5"}}
	p.Trucks = []TruckRow{{Ticket: "40117", Start: later(0), AgeMin: some(52), Volume: some(6), Slump: some(0.09), Concrete: some(29.5), WaterAdded: some(0)},
		{Ticket: "40121", Start: later(0.7), AgeMin: some(61), Volume: some(6), Slump: some(0.08), Concrete: some(30.5), WaterAdded: some(0)},
		{Ticket: "40126", Start: later(1.4), AgeMin: some(98), Volume: some(5.5), Slump: some(0.15), Concrete: some(32), WaterAdded: some(15), AskedBy: "placer", Note: "w/c rose from 0.50 to 0.55"}}
	p.Sentences = []string{"the surface dried faster than it bled from " + "11:20 on; the film was gone before floating began", "the window for the wet saw was Wed 17:24 to 22:12; J3, J4 and J5 were cut three to four hours after it closed", "in the samples the slab had cracked by itself in 8 of 10 before J3 was cut"}
	fixtureFresh(&p)
	p.NotGiven = []string{"rain: no record, so washing of the surface is not looked at"}
	return p
}

// fixture is a whole report of a plausible job; nothing in it is real.
func fixture() *Content {
	slab := fixtureSlab()
	panels, err := slab.Panels()
	if err != nil {
		panic(err)
	}
	mechanism, triggers, _ := fixtureCauses()
	start1, start2, start3 := at(18, 9, 0), at(19, 9, 0), at(23, 8, 0)
	c := &Content{
		Head: Head{Job: "apron-a", Number: "25-041", Title: "Why apron A cracked", Client: "Orchard Storage Ltd", Place: "Loading yard, Campo Bajo", SlabID: "A", SlabName: "Apron A",
			Looked: at(30, 10, 0), LookedBy: "M. Walker", Author: "M. Walker", Revision: "DRAFT", Zone: fixtureZone, Version: "0.1.0", DataHash: "9f2c41aa03d7b6e8c1905f7be2d4a6681b3c5d7e9f00112233445566778899aa", Seed: 2025},
		PageOne: PageOne{
			Answers: []Answer{
				{Key: "structural", Question: "Is it structural?", Plain: "No, save perhaps the broken corner F8.", Exact: "The sides of eleven of the twelve findings hold together; a 40 kN wheel is carried with the margin the slab was made with.", Chance: &Chance{P: 0.9, Low: 0.8, High: 0.95, About: "about 9 in 10"}, Workings: []string{"movement"}},
				{Key: "worse", Question: "Will it get worse?", Plain: "The cracks will open and close with the seasons and widen by about a millimetre over two years.", Exact: "Shrinkage still to come 0.26 mm per m. We would watch F1 and F3; a step of more than 2 mm would change our mind.", Chance: &Chance{P: 0.7, Low: 0.5, High: 0.85, About: "about 7 in 10"}, Workings: []string{"movement"}},
				{Key: "why", Question: "Why did it crack?", Plain: "The joints were cut after the slab had cooled in its first night and cracked by itself, first at the inside corner.", Exact: "Early cooling and drying held by friction and the corner: about 7 in 10. Next: drying over the first months. We could not tell for F8.", Chance: &Chance{P: 0.72, Low: 0.55, High: 0.84, About: "about 7 in 10"}, Workings: []string{"causes-F1", "window-strip-1"}},
				{Key: "now", Question: "What now?", Plain: "Watch F1, F2 and F3 over one winter, then fill them in the coldest week; take a core at F8 before the yard opens.", Exact: "Filling 11 m of crack: half a day with one lane closed, 180 to 240 EUR at the rates given.", Chance: &Chance{P: 0.8, Low: 0.65, High: 0.9, About: "about 8 in 10"}},
				{Key: "who", Question: "Who could have stopped it?", Plain: "Whoever kept the saw on site on Wednesday evening; and the drawing, with a joint to the inside corner.", Exact: "Cutting J4 by Wed 19:30 brings the chance of F3 from 8 in 10 to 1 in 10.", Chance: &Chance{P: 0.78, Low: 0.6, High: 0.9, About: "about 8 in 10"}, Workings: []string{"window-strip-1"}},
			},
			Doubt: "the weather is from an airport 11 km away; a calm evening in the yard would close the window two hours later", NotDone: "no core was taken, no bars were uncovered and the ground was not opened", Reliance: "the client named above, for deciding on repair; not for the design of new work"},
		Plan: PlanView{Slab: slab, Panels: panels, Area: 350 - 1.5*1.5 - 4.5*0.4,
			Pours:     []PourArea{{"S1", "Strip 1", rect(0, 0, 24, 5), &start1}, {"S2", "Strip 2", rect(0, 5, 24, 10), &start2}, {"S3", "Strip 3", rect(0, 10, 11, 20), &start3}},
			Unseen:    []walk.Unseen{{ID: "U1", Area: rect(19, 6.5, 22.5, 9.4), Why: "stacked pallets"}},
			BarLines:  fixtureBars(),
			DowelBars: fixtureDowels(),
			Symbols: []JointSymbol{{ID: "J3", CutAt: when(19, 1, 30), Hours: some(16.5), State: "missed", Opened: "yes", DepthShare: some(0.25)},
				{ID: "J4", CutAt: when(19, 2, 0), Hours: some(17), State: "missed", Opened: "yes", DepthShare: some(0.27)},
				{ID: "J5", CutAt: when(19, 2, 36), Hours: some(17.6), State: "missed", Opened: "no", DepthShare: some(0.24)}}},
		Pours:    []PourDay{fixturePour("S1", "Strip 1", 18, 9), fixturePour("S2", "Strip 2", 19, 9), fixturePour("S3", "Strip 3", 23, 8)},
		Findings: fixtureFindings(),
		Slab: SlabAnswer{Answer: "Seven of the twelve findings go back to one evening: the joints of strips 1 and 2 were cut after the slab had cracked by itself.",
			Causes: append(mechanism[:2:2], triggers...), Together: []string{"F3 explains F4: the crack beside J4 took the movement that J5 was to take", "F1 and F2 share the first cool night"}, Options: fixtureOptions()},
		Hands:    fixtureHands(),
		Movement: Movement{ShrinkageNow: 1.4e-4, ShrinkageLater: 2.6e-4, Season: 28, OpeningLater: (2.6e-4 + 10e-6*28) * 5.6, Sentence: "A joint at the mean panel length of 5.6 m has about 3 mm still to open, half by drying and half by the cold of winter.", Working: "movement"},
		Assumptions: []Assumption{{"friction on the base", "1.0 (0.5 to 1.6)", "assumed", "rolled stone under one plastic sheet", "a smooth base would halve the tension in the middle of a panel"},
			{"edge strength for the wet saw", "5 MPa (3.5 to 7)", "default", "no trial cut was noted", "1 MPa moves the opening of the window by about 40 minutes"}},
		Missing:  []Missing{{"pours[2].trucks", "tickets of strip 3", "so water added in strip 3 is not known"}, {"ground.support_MN_m3", "stiffness of the ground", "so the stress under a wheel is given as a range"}},
		Cautions: []string{"silica dust when sawing, drilling or grinding", "find services, heating pipes and bars before coring"},
		Workings: fixtureWorkings(),
		Sources:  []SourceRow{{"EN 1992-1-1:2004", "seen in another code or excerpt"}, {"Uno, ACI Materials Journal 95(4) 1998", "seen in another code or excerpt"}},
	}
	return c
}

// fixtureFresh fills what is known of a pour by panel, hour and depth.
func fixtureFresh(p *PourDay) {
	later := func(h float64) *time.Time { t := p.Start.Add(time.Duration(h * float64(time.Hour))); return &t }
	p.DryingLimit = some(0.75)
	for i, panel := range []string{"P1", "P2", "P3"} {
		placed := 1.2 * float64(i)
		w := PanelWindow{Panel: panel, Placed: *later(placed), Order: 3 - i,
			Wet:   Window{Saw: "wet", Opens: later(placed + 8.1), OpensLow: later(placed + 7.4), OpensHigh: later(placed + 9.2), Best: later(placed + 9.4), Closes: later(placed + 12.6), ClosesLow: later(placed + 11.5), ClosesHigh: later(placed + 14), Why: "its own clock", Working: "window-strip-1"},
			Early: Window{Saw: "early-entry", Opens: later(placed + 5.4), Closes: later(placed + 12.6), Why: "needs less edge strength"}}
		if i == 2 {
			w.Wet.Closes, w.Wet.ClosesLow, w.Wet.ClosesHigh = nil, nil, nil
		}
		for h := 4.0; h <= 24; h++ {
			w.Curve = append(w.Curve, CutChance{At: *later(placed + h), Hours: h, Ready: 1 / (1 + math.Exp(-(h-8)/0.8)), Cracked: 0.9 / (1 + math.Exp(-(h-14.5-float64(i))/1.2))})
		}
		p.Panels = append(p.Panels, w)
	}
	film, deficit := 0.0, 0.0
	for h := 0.5; h < 6; h += 0.5 {
		drying, bleeding := 0.35+0.14*h, 0.7*math.Exp(-h/2.5)
		if film += 0.5 * (bleeding - drying); film < 0 {
			deficit, film = deficit-film, 0
		}
		p.Plastic = append(p.Plastic, PlasticHour{Time: *later(h), Hours: h, Drying: drying, Bleeding: bleeding, Film: film, Deficit: deficit, Shrinkage: 0.8 * (1 - math.Exp(-deficit)), Settlement: 0.3 * (1 - math.Exp(-h))})
	}
	p.Depths = []float64{0, 0.03, 0.075, 0.12, 0.15}
	for _, h := range []float64{6, 12, 18, 36} {
		f := Profile{Time: *later(h), Hours: h}
		for _, z := range p.Depths {
			f.Temperature = append(f.Temperature, 24+90*z*math.Sin(h/6)+h/6)
			f.Humidity = append(f.Humidity, 1-0.2*math.Exp(-z*30)*h/36)
			f.Strength = append(f.Strength, 0.7*h*(0.9+z))
			f.Stress = append(f.Stress, (0.05-z)*h/10)
		}
		p.Profiles = append(p.Profiles, f)
	}
	p.Moves = []SensitivityRow{{What: "edge strength for the saw", Low: "3.5 MPa", High: "7 MPa", Known: "default", Opens: 140, Closes: 0, Share: 0.46},
		{What: "wind at the slab", Low: "1.5 m/s", High: "4 m/s", Known: "recorded", Opens: 12, Closes: -85, Share: 0.31},
		{What: "friction on the base", Low: "0.5", High: "1.6", Known: "assumed", Opens: 0, Closes: -64, Share: 0.18}}
	p.Measured = &MeasuredFit{Used: []string{"two logged sensors, 40 mm and 110 mm deep", "final set felt at 14:50"}, Members: 9.4, Text: "the logged temperatures move the opening 25 minutes earlier and halve its range",
		Warnings: []string{"the lower sensor stands 2 K above every sample: look whether it lay in the sun"}, Working: "window-strip-1"}
	row := func(name, changed string, opens, best, closes, peak, plastic, cracked float64, night bool) WhatIf {
		return WhatIf{Name: name, Changed: changed, Window: Window{Saw: "wet", Opens: later(opens), OpensLow: later(opens - 0.8), OpensHigh: later(opens + 1), Best: later(best), Closes: later(closes), Why: "edge strength and cooling"}, Peak: peak, Plastic: plastic, Cracked: cracked, Night: night}
	}
	p.WhatIfs = []WhatIf{row("as it was", "as it was", 8.4, 9.5, 13.2, 1.27, 0.62, 0.04, false), row("three hours earlier", "start 3 h earlier", 5.9, 6.8, 12.1, 1.05, 0.41, 0.02, false),
		row("in the cool of the evening", "start 9 h later", 19.8, 21, 29.5, 0.48, 0.003, 0.01, true),
		{Name: "the next day", Changed: "a day later", Text: "the weather record ends before final set"}}
}
