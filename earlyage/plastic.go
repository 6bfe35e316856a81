package earlyage

import (
	"fmt"
	"math"

	"slabwright/source"
	"slabwright/working"
)

// Plastic is how the fresh surface fared between placing and set.
type Plastic struct {
	FilmGone     float64 // h at which the water film was gone, NaN if not before final set
	InitialSet   float64 // of the surface, h
	FinalSet     float64
	DryFor       float64 // h from there to final set: the time plastic cracks can form
	Worst        float64 // largest drying rate a wet surface would have had before final set, kg/m2/h
	WorstAt      float64 // h
	Bled         float64 // water that came up, kg/m2
	Evaporated   float64 // water that left before final set, kg/m2
	Deficit      float64 // of it, drawn out of the concrete itself, kg/m2
	OverLimit    float64 // hours the drying rate was above the limit before final set
	Limit        float64 // kg/m2/h
	StillPlastic bool    // final set was not reached within the run
}

// Plastic returns the plastic stage under a limit on the drying rate, such as
// DryingLimit or DryingLimitLowBleed of package climate. Neither the limit nor
// the deficit alone says that it cracked: low bleeding cracks under mild drying.
func (h *History) Plastic(limit float64) Plastic {
	p := Plastic{FilmGone: h.FilmGone, InitialSet: h.InitialSet.Surface, FinalSet: h.FinalSet.Surface,
		Deficit: h.PlasticDeficit, Limit: limit}
	end := p.FinalSet
	if math.IsNaN(end) {
		end, p.StillPlastic = h.Hours[len(h.Hours)-1], true
	}
	if !math.IsNaN(p.FilmGone) {
		p.DryFor = math.Max(0, end-p.FilmGone)
	}
	film := 0.0
	for i := 1; i < len(h.Hours) && h.Hours[i] <= end+1e-9; i++ {
		dt := h.Hours[i] - h.Hours[i-1]
		p.Evaporated += dt * h.Evaporation[i]
		film = h.BleedFilm[i]
		if h.OpenRate[i] > limit {
			p.OverLimit += dt
		}
		if h.OpenRate[i] > p.Worst {
			p.Worst, p.WorstAt = h.OpenRate[i], h.Hours[i]
		}
	}
	p.Bled = p.Evaporated - p.Deficit + film
	return p
}

// PlasticWorking returns the calculation of the plastic stage.
//
//	id     of the sheet, short and stable: "plastic-strip-2"
//	where  for its title: "strip 2"
func (h *History) PlasticWorking(limit float64, id, where string) working.Sheet {
	p := h.Plastic(limit)
	aci := source.Cite("aci305", "surface drying starts when evaporation has taken the bleed water")
	s := working.Sheet{ID: id, Title: "Drying before set, " + where,
		Basis: []string{fmt.Sprintf("Limit on the drying rate %.2f kg/m2/h.", limit),
			"A wet surface dries at the open rate; when its film is gone it goes on so until initial set, then falls to what hardened pores let through at final set."}}
	worst := working.New("E_max", "largest drying rate of a wet surface before final set", "E_max", p.Worst, "kg/m2/h", source.Cite("uno1998", "SI form"),
		working.In("E_max", p.Worst, "kg/m2/h", fmt.Sprintf("%.1f h after placing", p.WorstAt))).
		Beside("limit", limit, source.Cite("aci305", "0.2 lb/ft2/h"), "the limit is a call for precautions, not a forecast")
	worst.Verdict = verdict(p.Worst <= limit)
	s.Add(worst,
		working.New("w_b", "water that bled", "w_b", p.Bled, "kg/m2", aci, working.In("w_b", p.Bled, "kg/m2", "summed to final set")),
		working.New("w_e", "water that evaporated before final set", "w_e", p.Evaporated, "kg/m2", aci, working.In("w_e", p.Evaporated, "kg/m2", "")))
	deficit := working.New("w_d", "water drawn out of the fresh concrete", "w_d", p.Deficit, "kg/m2", aci, working.In("w_d", p.Deficit, "kg/m2", "what bleeding did not cover while the surface was dry"))
	deficit.Verdict = verdict(p.Deficit <= 0)
	s.Add(deficit)
	if !math.IsNaN(p.FilmGone) {
		s.Add(working.New("t_dry", "hours after placing at which the surface fell dry", "t_dry", p.FilmGone, "h", aci, working.In("t_dry", p.FilmGone, "h", "")),
			working.New("Δt", "hours it lay dry before final set", "t_fs - t_dry", p.DryFor, "h", aci,
				working.In("t_fs", p.FilmGone+p.DryFor, "h", "final set of the surface"), working.In("t_dry", p.FilmGone, "h", "")))
	}
	return s
}

func verdict(pass bool) string {
	if pass {
		return "pass"
	}
	return "note"
}
