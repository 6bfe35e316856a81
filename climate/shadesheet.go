package climate

import (
	"fmt"
	"math"

	"slabwright/plan"
	"slabwright/source"
	"slabwright/working"
)

// ShadeSheet returns the calculation of the shade on an area: sky in view, wind, and
// the direct sun of every hour the sun is up, with the length of the highest obstacle's
// shadow to pace out on site.
//
//	id     of the sheet, short and stable: "shade-strip-2"
//	where  for its title: "strip 2"
//	hours  from [Surroundings.Hours] for the same area
func (s Surroundings) ShadeSheet(id, where string, area plan.Ring, hours []ShadeHour) working.Sheet {
	sheet := working.Sheet{ID: id, Title: "Shade on " + where, Basis: []string{
		fmt.Sprintf("%d obstacles on the plan, standing upright on level ground; y axis of the plan at %.0f° from north.", len(s.Obstacles), s.Bearing),
		"A point is in shade where the line to the sun passes through an obstacle; shares are means over points of the area.",
		"Wind behind walls and fences: common practice, no source.",
	}}
	if len(hours) == 0 {
		return sheet
	}
	geometry := source.Cite("mechanics", "geometry of the shadow")
	sheet.Add(
		working.New("ψ", "share of the sky in view", "ψ", hours[0].Sky, "-", source.Cite("mechanics", "sky of even brightness over a level plane"),
			working.In("ψ", hours[0].Sky, "-", "summed over 180 bearings")),
		working.New("c_w", "share of the wind felt", "c_w", hours[0].Wind, "-", source.Cite("practice", "windbreaks"), working.In("c_w", hours[0].Wind, "-", s.windWords())))
	highest := s.highest()
	for _, h := range hours {
		if h.Zenith >= 90 {
			continue
		}
		what := fmt.Sprintf("length of the shadow of %s, sun at %.0f°; the area has %.0f %% of the direct sun from %s to %s", highest.Name, h.Azimuth,
			100*h.Sun, h.From.Format("2 Jan 15:04"), h.To.Format("15:04 MST"))
		sheet.Add(working.New("L", what, "H·tan(z·π/180)", highest.Height*math.Tan(radians(h.Zenith)), "m", geometry,
			working.In("H", highest.Height, "m", "height"), working.In("z", h.Zenith, "°", "zenith angle of the sun")))
	}
	return sheet
}

// highest is the obstacle with the highest top; without any, one of no height.
func (s Surroundings) highest() Obstacle {
	best := Obstacle{Name: "nothing"}
	for _, o := range s.Obstacles {
		if o.Height > best.Height {
			best = o
		}
	}
	return best
}

func (s Surroundings) windWords() string {
	if s.WindFrom == nil {
		return "its bearing is not known; mean over all"
	}
	return fmt.Sprintf("from %.0f°", *s.WindFrom)
}
