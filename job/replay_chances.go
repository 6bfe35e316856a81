package job

import (
	"fmt"
	"math"
	"slices"

	"slabwright/plan"
	"slabwright/report"
)

// chanceRows puts the samples into rows by joint and by panel.
func (r *replayRun) chanceRows() {
	c := r.chances
	if c == nil {
		return
	}
	g := c.Grid
	out := &report.ReplayChances{Members: c.Members, Cracked: round(c.Cracked, 3), First: firstOf(c.Earliest), Low: roundAt(g.Low), Cell: g.Cell, Across: g.Across, Cells: make([]byte, len(g.Chance)),
		Joints: []report.JointOpens{}, Panels: []report.PanelCracks{}}
	for i, v := range g.Chance {
		out.Cells[i] = byte(math.Round(100 * v))
	}
	for _, j := range c.Joints {
		row := report.JointOpens{Joint: j.Line, Step: j.Step, Found: r.jointSeen(j.Line)}
		for _, v := range j.Opened {
			row.Opened = append(row.Opened, round(v, 3))
			row.Mean += v / float64(len(j.Opened))
		}
		row.Mean = round(row.Mean, 3)
		out.Joints = append(out.Joints, row)
	}
	for _, p := range r.d.panels {
		out.Panels = append(out.Panels, r.panelChance(p))
	}
	r.out.Chances = out
}

// firstOf returns the hour of the first crack of those members that have one: 1 in 10,
// middle, 9 in 10; zeros for none.
func firstOf(earliest []float64) (out [3]float64) {
	var hours []float64
	for _, h := range earliest {
		if !math.IsInf(h, 1) {
			hours = append(hours, h)
		}
	}
	if len(hours) == 0 {
		return out
	}
	slices.Sort(hours)
	for i, share := range []float64{0.1, 0.5, 0.9} {
		out[i] = round(hours[int(share*float64(len(hours)-1)+0.5)], 1)
	}
	return out
}

func (r *replayRun) panelChance(p plan.Panel) report.PanelCracks {
	g := r.chances.Grid
	row := report.PanelCracks{Panel: p.ID, AreaM2: round(p.Area, 1), Found: []string{}}
	for i := range g.Chance {
		middle := plan.Point{X: g.Low.X + (float64(i%g.Across)+0.5)*g.Cell, Y: g.Low.Y + (float64(i/g.Across)+0.5)*g.Cell}
		own := p.Ring.Contains(middle)
		if !own {
			continue
		}
		row.Metres += g.Length[i] * g.Cell * g.Cell
		if g.Chance[i] > row.Worst {
			row.Worst, row.At = g.Chance[i], middle
		}
	}
	row.PerM2, row.Metres, row.Worst = round(row.Metres/p.Area, 4), round(row.Metres, 2), round(row.Worst, 3)
	if row.Worst > 0 {
		row.Where = r.placeOf(row.At)
	}
	if w := r.d.lastWalk(); w != nil {
		for _, f := range w.Findings {
			if throughCrack(f) && crossesPanel(p, f.Lines) {
				row.Found = append(row.Found, f.ID)
			}
		}
	}
	return row
}

// placeOf names the corner or fixture near a place, or gives its coordinates.
func (r *replayRun) placeOf(at plan.Point) string {
	best, least := "", 1.2
	for _, c := range r.corners {
		if away := c.At.To(at); away < least {
			best, least = fmt.Sprintf("inside corner %s (%.1f, %.1f)", r.d.cornerName(c.Fixture), c.At.X, c.At.Y), away
		}
	}
	if best != "" {
		return best
	}
	return fmt.Sprintf("(%.1f, %.1f)", at.X, at.Y)
}

func crossesPanel(p plan.Panel, lines [][]plan.Point) bool {
	for _, l := range lines {
		path := plan.Polyline(l)
		for i := range 11 {
			if at, _ := path.At(path.Length() * float64(i) / 10); p.Ring.Contains(at) && p.Ring.Distance(at) > nearEdge {
				return true
			}
		}
	}
	return false
}
