package earlyage

import (
	"math"

	"slabwright/concrete"
	"slabwright/internal/march"
)

// columns returns every series of the history, so that all are grown alike.
func (h *History) columns() []*[]float64 {
	return []*[]float64{&h.Hours, &h.Surface, &h.Mid, &h.Bottom, &h.Air, &h.Degree, &h.EquivalentAge,
		&h.EdgeAge, &h.Fc, &h.Fct, &h.E, &h.EdgeFc, &h.TopFct, &h.MeanStrain, &h.Gradient, &h.Autogenous,
		&h.Drying, &h.FullRestraint, &h.FullCurl, &h.SelfTop, &h.SelfSkin, &h.SelfMid, &h.SelfBottom, &h.Evaporation,
		&h.OpenRate, &h.BleedFilm, &h.Humidity, &h.SurfaceAge, &h.Bled, &h.Gained, &h.Lost, &h.Drawn}
}

// grow makes room for n entries in one piece, or empties what is there.
func (h *History) grow(n int, profiles bool) {
	columns := h.columns()
	h.Temperature, h.Stress = nil, nil
	if profiles {
		h.Temperature, h.Stress = make([][]float64, 0, n), make([][]float64, 0, n)
	}
	if cap(h.Hours) >= n {
		for _, c := range columns {
			*c = (*c)[:0]
		}
		return
	}
	all := make([]float64, n*len(columns))
	for i, c := range columns {
		*c = all[i*n : i*n : (i+1)*n]
	}
}

// record adds the present state to the history.
func (r *run) record(hours float64) {
	h, middle := r.history, r.middle
	s := r.surface
	s.look(hours * 3600)
	c := &r.Concrete
	edge, edgeAge := r.zone(r.edge)
	whole, _ := r.zone(r.all)
	degree, _ := r.local.degree(r.heat.Hidden[middle])
	values := []float64{hours, r.heat.Value[0], r.heat.Value[middle], r.heat.Value[r.bottom], s.feel.Air,
		degree, r.heat.Hidden[middle] / 3600, edgeAge, whole.Strength, whole.Tensile, whole.Modulus,
		edge.Strength, edge.Tensile, r.mean, r.slope * r.Thickness / c.Expansion,
		-r.slab.Mean(r.autogenous, 0, r.bottom), -r.slab.Mean(r.drying, 0, r.bottom),
		r.axial.stress, r.curl.stress, r.selfTop(), r.self[0].stress, r.self[middle].stress, r.self[r.bottom].stress,
		r.film.rate, s.potential(r.heat.Value[0]), r.film.Film, r.water.Value[0],
		r.heat.Hidden[0] / 3600, r.film.Bled, r.film.Gained, r.film.Lost, r.film.Deficit}
	for i, column := range h.columns() {
		*column = append(*column, values[i])
	}
	if r.Profiles {
		h.Temperature = append(h.Temperature, append([]float64(nil), r.heat.Value[:r.bottom+1]...))
		stress := make([]float64, r.bottom+1)
		for i := range stress {
			stress[i] = r.self[i].stress
		}
		h.Stress = append(h.Stress, stress)
		h.PoreHumidity = append(h.PoreHumidity, append([]float64(nil), r.water.Value[:r.bottom+1]...))
		strength := make([]float64, r.bottom+1)
		for i := range strength {
			strength[i] = r.table.at(r.heat.Hidden[i] / 3600).Strength
		}
		h.Strength = append(h.Strength, strength)
	}
}

// shares returns what each node counts for in the mean from the top down to a
// depth, of values that are linear between the nodes.
func shares(g march.Grid, to float64) []float64 {
	out := make([]float64, len(g))
	for i := 0; i+1 < len(g) && g[i] < to; i++ {
		dx := g[i+1] - g[i]
		part := math.Min(1, (to-g[i])/dx) // of the interval, from its top
		out[i] += dx * part * (1 - part/2) / to
		out[i+1] += dx * part * part / 2 / to
	}
	return out
}

// zone returns the mean properties and equivalent age, h, of a zone.
func (r *run) zone(shares []float64) (p concrete.Properties, age float64) {
	for i, share := range shares {
		if share == 0 {
			break
		}
		q := &r.now[i]
		p.Strength += share * q.Strength
		p.Tensile += share * q.Tensile
		p.Modulus += share * q.Modulus
		age += share * r.heat.Hidden[i] / 3600
	}
	return p, age
}

// selfTop returns the mean self-equilibrating stress of the zone the saw cuts. A
// crack that opens a joint elsewhere needs tension over about that depth; the
// stress of the skin only crazes it.
func (r *run) selfTop() float64 {
	var sum float64
	for i, share := range r.edge {
		sum += share * r.self[i].stress
	}
	return sum
}

// finish writes down what is known only at the end.
func (r *run) finish() {
	h := r.history
	h.Balance = r.balance()
	h.FilmGone, h.PlasticDeficit, h.CrazedFrom = r.film.Gone, r.film.Deficit, r.crazed
	h.SetAges = [2]float64{r.setFrom, r.setTo}
	h.InitialSet = Set{r.initial[0], r.initial[r.middle], r.initial[r.bottom]}
	h.FinalSet = Set{r.last[0], r.last[r.middle], r.last[r.bottom]}
}
