package job

import (
	"math"
	"time"

	"slabwright/layout"
	"slabwright/plan"
	"slabwright/restraint"
)

// designPours deals the pours of a job out to the panels of a joint plan. A strip of
// the plan is placed as the pour in which most of it lies: new strips need not be those
// that the job's pours were drawn for.
type designPours struct {
	panels []plan.Panel
	of     map[string]*planPour // by panel
}

func (in *planInputs) dealt(slab plan.Slab, panels []plan.Panel) (*designPours, error) {
	strips, err := layout.Strips(slab)
	if err != nil {
		return nil, err
	}
	out := &designPours{panels: panels, of: map[string]*planPour{}}
	for _, s := range strips {
		pour := in.mostOf(s.Panels, panels)
		for _, id := range s.Panels {
			out.of[id] = pour
		}
	}
	for _, p := range panels {
		if out.of[p.ID] == nil { // a block-out, filled in with what is round it
			out.of[p.ID] = in.mostOf([]string{p.ID}, panels)
		}
	}
	return out, nil
}

// mostOf is the pour in which the greatest part of some panels lies.
func (in *planInputs) mostOf(ids []string, panels []plan.Panel) *planPour {
	best, most := in.pours[0], 0.0
	for _, pour := range in.pours {
		share := 0.0
		for _, id := range ids {
			if p := plan.PanelByID(panels, id); p != nil {
				share += plan.OverlapArea(p.Ring, pour.run.pour.Area)
			}
		}
		if share > most {
			best, most = pour, share
		}
	}
	return best
}

// restraintPours is the concrete of every panel, for the sheet in plan.
func (p *designPours) restraintPours(thickness float64) []restraint.Pour {
	var out []restraint.Pour
	for _, panel := range p.panels {
		pour := p.of[panel.ID]
		out = append(out, restraint.Pour{ID: panel.ID, Area: panel.Ring, Thickness: thickness,
			At: func(hour float64) restraint.Concrete { return pour.at(hour, 1) }})
	}
	return out
}

// bestCut is the hour at which a joint is best sawn: the best of the window of the
// later of the pours beside it, or the next morning where that has none.
func (p *designPours) bestCut(path []plan.Point) float64 {
	hour := math.Inf(-1)
	for _, panel := range p.beside(path) {
		pour := p.of[panel]
		hour = math.Max(hour, pour.offset+pour.bestAfter())
	}
	return hour
}

// bestAfter is how long after placing a pour is best sawn, h.
func (p *planPour) bestAfter() float64 {
	if w := p.run.wet; w != nil {
		for _, t := range []time.Time{w.Best, w.Opens} {
			if !t.IsZero() {
				return t.Sub(p.run.centre).Hours()
			}
		}
	}
	return nextMorning
}

// beside are the panels on the two sides of the middle of a joint.
func (p *designPours) beside(path []plan.Point) []string {
	line := plan.Polyline(path)
	middle, way := line.At(line.Length() / 2)
	var out []string
	for _, side := range []float64{1, -1} {
		if panel := plan.PanelAt(p.panels, middle.Plus(way.Left().Times(0.05*side))); panel != nil {
			out = append(out, panel.ID)
		}
	}
	if len(out) == 0 {
		out = append(out, p.panels[0].ID)
	}
	return out
}
