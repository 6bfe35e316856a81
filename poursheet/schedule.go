package poursheet

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"slabwright/plan"
)

// Schedule is what a joint drawing lists and counts.
type Schedule struct {
	Joints []JointRow `json:"joints"`
	Dowels []DowelRow `json:"dowels"`
	Steel  []SteelRow `json:"steel"`
	Bars   []BarsRow  `json:"corner_bars,omitempty"`
	Totals []Total    `json:"totals"`
}

// JointRow is one joint to be set out.
type JointRow struct {
	ID       string         `json:"id"`
	Name     string         `json:"name,omitempty"`
	Kind     plan.JointKind `json:"kind"`
	Points   []plan.Point   `json:"points_m"` // from the setting-out point
	Length   float64        `json:"length_m"`
	Transfer string         `json:"transfer,omitempty"` // none, interlock, dowelled ...; empty: nobody said
	Dowels   int            `json:"dowels"`             // bars across it; 0: none, or their spacing and length are not known
}

// DowelRow is dowels alike.
type DowelRow struct {
	Joints    []string `json:"joints"`
	Diameter  *float64 `json:"diameter_m,omitempty"`
	Length    *float64 `json:"length_m,omitempty"`
	Spacing   *float64 `json:"spacing_m,omitempty"`
	Clear     *float64 `json:"clear_of_crossing_m,omitempty"`
	FreeAlong string   `json:"free_along,omitempty"`
	FreeSide  string   `json:"free_sideways,omitempty"`
	Count     int      `json:"count"`
	Mass      *float64 `json:"mass_kg,omitempty"`
}

// SteelRow is one zone of mesh or bars.
type SteelRow struct {
	ID       string   `json:"id"`
	Name     string   `json:"name,omitempty"`
	Diameter *float64 `json:"diameter_m,omitempty"`
	Cover    *float64 `json:"cover_m,omitempty"`
	PitchX   *float64 `json:"pitch_x_m,omitempty"`
	PitchY   *float64 `json:"pitch_y_m,omitempty"`
	AtJoints string   `json:"at_joints,omitempty"`
	Area     float64  `json:"area_m2"`  // of the zone on the slab
	Length   float64  `json:"length_m"` // of all bars, laps not counted
	Counted  bool     `json:"counted"`  // from bars where they lie; else by area over pitch
	Mass     *float64 `json:"mass_kg,omitempty"`
}

// BarsRow is the bars across one inside corner that no joint meets.
type BarsRow struct {
	ID       string     `json:"id"`
	At       plan.Point `json:"at_m"` // the corner, from the setting-out point
	Angle    float64    `json:"angle_deg"`
	Count    int        `json:"count"`
	Diameter *float64   `json:"diameter_m,omitempty"`
	Length   *float64   `json:"length_m,omitempty"`
	Spacing  *float64   `json:"spacing_m,omitempty"`
	Mass     *float64   `json:"mass_kg,omitempty"`
	Note     string     `json:"note,omitempty"`
}

// Total is one line of quantities.
type Total struct {
	What   string  `json:"what"`
	Amount float64 `json:"amount"`
	Unit   string  `json:"unit"`
}

// steelDensity is the mass of reinforcing steel, kg/m³. Source: EN 1992-1-1
// 3.2.7(3), from memory.
const steelDensity = 7850.0

// mass returns the mass of a length of round bar, kg.
func mass(diameter, length float64) float64 {
	return steelDensity * math.Pi / 4 * diameter * diameter * length
}

// Schedule lists and counts the joints, dowels and steel of a drawing.
func (d Drawing) Schedule() Schedule {
	var s Schedule
	origin := d.origin()
	for _, j := range d.Slab.Joints {
		row := JointRow{ID: j.ID, Name: j.Name, Kind: j.Kind, Length: plan.Polyline(j.Path).Length(), Dowels: len(d.dowels(j))}
		for _, p := range j.Path {
			row.Points = append(row.Points, p.Minus(origin))
		}
		if j.Transfer != nil {
			row.Transfer = j.Transfer.Value
		}
		s.Joints = append(s.Joints, row)
	}
	s.Dowels = d.dowelRows()
	s.Steel = d.steelRows()
	for _, c := range d.Slab.CornerBars {
		s.Bars = append(s.Bars, barsRow(c, origin))
	}
	s.Totals = d.totals(s)
	return s
}

func barsRow(c plan.CornerBars, origin plan.Point) BarsRow {
	row := BarsRow{ID: c.ID, At: c.At.Minus(origin), Angle: c.Angle, Count: c.Bars, Diameter: factValue(c.Diameter), Length: factValue(c.Length), Spacing: factValue(c.Spacing), Note: c.Note}
	if row.Diameter != nil && row.Length != nil {
		m := mass(*row.Diameter, *row.Length*float64(c.Bars))
		row.Mass = &m
	}
	return row
}

// dowelRows puts joints with dowels alike together.
func (d Drawing) dowelRows() []DowelRow {
	var rows []DowelRow
	at := map[string]int{}
	for _, j := range d.Slab.Joints {
		if j.Dowels == nil {
			continue
		}
		row := DowelRow{}
		var key strings.Builder
		take := func(value func() *float64) *float64 {
			v := value()
			if v != nil {
				fmt.Fprintf(&key, "%.6f/", *v)
			} else {
				key.WriteString("?/")
			}
			return v
		}
		x := j.Dowels
		row.Diameter = take(func() *float64 { return factValue(x.Diameter) })
		row.Length = take(func() *float64 { return factValue(x.Length) })
		row.Spacing = take(func() *float64 { return factValue(x.Spacing) })
		row.Clear = take(func() *float64 { return factValue(x.Clear) })
		row.FreeAlong, row.FreeSide = x.FreeAlong.Or(""), x.FreeSide.Or("")
		key.WriteString(row.FreeAlong + "/" + row.FreeSide)
		i, there := at[key.String()]
		if !there {
			i = len(rows)
			at[key.String()] = i
			rows = append(rows, row)
		}
		rows[i].Joints = append(rows[i].Joints, j.ID)
		rows[i].Count += len(d.dowels(j))
	}
	for i := range rows {
		if r := &rows[i]; r.Diameter != nil && r.Length != nil && r.Count > 0 {
			m := mass(*r.Diameter, *r.Length*float64(r.Count))
			r.Mass = &m
		}
	}
	return rows
}

func (d Drawing) steelRows() []SteelRow {
	var rows []SteelRow
	for _, z := range d.Slab.Steel {
		row := SteelRow{ID: z.ID, Name: z.Name, Diameter: factValue(z.Diameter), Cover: factValue(z.Cover),
			PitchX: factValue(z.PitchX), PitchY: factValue(z.PitchY), AtJoints: z.AtJoints.Or(""), Area: d.areaOf(z)}
		for _, b := range d.Slab.BarLines(z) {
			row.Length += b.Segment().Length()
			row.Counted = true
		}
		if !row.Counted {
			for _, pitch := range []*float64{row.PitchX, row.PitchY} {
				if pitch != nil && *pitch > 0 {
					row.Length += row.Area / *pitch
				}
			}
		}
		if row.Diameter != nil && row.Length > 0 {
			m := mass(*row.Diameter, row.Length)
			row.Mass = &m
		}
		rows = append(rows, row)
	}
	return rows
}

// areaOf returns the area of slab a zone of steel lies in, openings left out.
func (d Drawing) areaOf(z plan.BarZone) float64 {
	area := plan.Ring(z.Area)
	if len(area) < 3 {
		area = d.Slab.Outline
	}
	sum := plan.OverlapArea(area, d.Slab.Outline)
	for _, f := range d.Slab.Fixtures {
		if f.Opening && len(f.Shape) > 2 {
			sum -= plan.OverlapArea(area, f.Shape)
		}
	}
	return sum
}

// totals are the quantities: area, lengths of joint by kind, dowels, steel.
func (d Drawing) totals(s Schedule) []Total {
	area := 0.0
	for _, p := range d.Panels {
		area += p.Area
	}
	totals := []Total{{"slab", area, "m²"}}
	if t := factValue(d.Slab.Thickness); t != nil {
		totals = append(totals, Total{"concrete, by the thickness given, without waste", area * *t, "m³"})
	}
	lengths := map[plan.JointKind]float64{}
	for _, j := range s.Joints {
		lengths[j.Kind] += j.Length
	}
	var kinds []string
	for k := range lengths {
		kinds = append(kinds, string(k))
	}
	sort.Strings(kinds)
	for _, k := range kinds {
		totals = append(totals, Total{k + " joint", lengths[plan.JointKind(k)], "m"})
	}
	dowels := 0
	for _, r := range s.Dowels {
		dowels += r.Count
	}
	if dowels > 0 {
		totals = append(totals, Total{"dowels", float64(dowels), "bars"})
	}
	count, bars := 0, 0.0
	for _, r := range s.Bars {
		count += r.Count
		if r.Mass != nil {
			bars += *r.Mass
		}
	}
	if count > 0 {
		totals = append(totals, Total{"bars across inside corners", float64(count), "bars"}, Total{"steel of the bars across corners", bars, "kg"})
	}
	steel := 0.0
	for _, r := range s.Steel {
		if r.Mass != nil {
			steel += *r.Mass
		}
	}
	if steel > 0 {
		totals = append(totals, Total{"mesh and bars, without laps", steel, "kg"})
	}
	return totals
}
