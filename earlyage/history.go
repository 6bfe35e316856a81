package earlyage

import (
	"math"
	"time"
)

// History is what became of the column, by time. Every slice has one entry for
// each of Hours. Temperatures °C, strains lengthening positive, stresses tension
// positive in MPa.
type History struct {
	Placed time.Time
	Depth  []float64 // of the slab's layers from the top, m
	Hours  []float64 // after placing

	Surface, Mid, Bottom []float64 // temperature
	Air                  []float64

	Degree, EquivalentAge []float64 // at mid-depth; hours at 21.1 °C
	EdgeAge               []float64 // mean equivalent age of the zone the saw cuts, h
	Fc, Fct, E            []float64 // mean of the section
	EdgeFc                []float64 // mean compressive strength of the zone the saw cuts
	TopFct                []float64 // tensile strength of that zone

	MeanStrain []float64 // free strain of the section since set
	Gradient   []float64 // equivalent difference top less bottom since set, K; negative curls edges up
	Autogenous []float64 // mean, part of MeanStrain
	Drying     []float64 // mean, part of MeanStrain

	FullRestraint []float64 // stress if the mean strain were held along one direction, with creep
	FullCurl      []float64 // stress in the top if the curvature were held in both directions, with creep
	SelfTop       []float64 // self-equilibrating stress, mean of the zone the saw cuts
	SelfSkin      []float64 // the same in the very surface: at tensile strength it crazes
	SelfMid       []float64
	SelfBottom    []float64

	Evaporation []float64 // from the concrete, kg/m2/h
	OpenRate    []float64 // of a wet open surface, kg/m2/h
	BleedFilm   []float64 // water standing on the surface, kg/m2
	Humidity    []float64 // in the pores at the top
	SurfaceAge  []float64 // equivalent age of the surface, h
	Bled        []float64 // water that came up so far, kg/m2
	Gained      []float64 // dew so far, kg/m2
	Lost        []float64 // water that evaporated so far from the film, and out of the concrete until final set, kg/m2
	Drawn       []float64 // of it, out of the concrete itself, kg/m2

	FilmGone       float64 // h at which the water film was gone before set, NaN if it never was
	CrazedFrom     float64 // h at which drying and cooling first overcame the skin (crazing), NaN if never
	PlasticDeficit float64 // water drawn out of the fresh concrete before final set, kg/m2
	InitialSet     Set
	FinalSet       Set
	SetAges        [2]float64 // equivalent age at initial and final set, h
	Balance        Balance

	Temperature  [][]float64 // by time, then layer; only with Column.Profiles
	Stress       [][]float64 // self-equilibrating, as Temperature
	PoreHumidity [][]float64 // in the pores, 0 to 1, as Temperature
	Strength     [][]float64 // compressive, MPa, as Temperature
}

// Set is when the surface, the middle and the underside reached a stage of set, h
// after placing; NaN if not within the run.
type Set struct{ Surface, Mid, Bottom float64 }

// fresh returns a copy of the history up to an hour past the last final set in it.
func (h *History) fresh() *History {
	out := *h
	end := math.Max(h.FinalSet.Surface, math.Max(h.FinalSet.Mid, h.FinalSet.Bottom)) + 1 // NaN: all of it
	n := len(h.Hours)
	for n > 2 && h.Hours[n-2] > end {
		n--
	}
	from, to := h.columns(), out.columns()
	all := make([]float64, 0, n*len(from))
	for i := range from {
		all = append(all, (*from[i])[:n]...)
		*to[i] = all[len(all)-n : len(all) : len(all)]
	}
	out.Temperature, out.Stress = nil, nil
	return &out
}

// Moment is the history at one time.
type Moment struct {
	Hours                                          float64
	Surface, Mid, Bottom, Air                      float64
	Degree, EquivalentAge, EdgeAge                 float64
	Fc, Fct, E, EdgeFc, TopFct                     float64
	MeanStrain, Gradient                           float64
	FullRestraint, FullCurl                        float64
	SelfTop, SelfSkin, SelfMid, SelfBottom         float64
	Evaporation, OpenRate, BleedFilm, PoreHumidity float64
}

// At returns the history at a time in hours after placing, linear between its
// times and held at its ends.
func (h *History) At(hours float64) Moment {
	i, s := h.place(hours)
	m := h.pick(func(a []float64) float64 { return (1-s)*a[i] + s*a[i+1] })
	m.Hours = math.Min(math.Max(hours, h.Hours[0]), h.Hours[len(h.Hours)-1])
	return m
}

// moment is the history at one of its own times.
func (h *History) moment(i int) Moment {
	return h.pick(func(a []float64) float64 { return a[i] })
}

// pick makes a moment of one value from each series.
func (h *History) pick(v func([]float64) float64) Moment {
	return Moment{
		Hours: v(h.Hours), Surface: v(h.Surface), Mid: v(h.Mid), Bottom: v(h.Bottom), Air: v(h.Air),
		Degree: v(h.Degree), EquivalentAge: v(h.EquivalentAge), EdgeAge: v(h.EdgeAge),
		Fc: v(h.Fc), Fct: v(h.Fct), E: v(h.E), EdgeFc: v(h.EdgeFc), TopFct: v(h.TopFct),
		MeanStrain: v(h.MeanStrain), Gradient: v(h.Gradient),
		FullRestraint: v(h.FullRestraint), FullCurl: v(h.FullCurl),
		SelfTop: v(h.SelfTop), SelfSkin: v(h.SelfSkin), SelfMid: v(h.SelfMid), SelfBottom: v(h.SelfBottom),
		Evaporation: v(h.Evaporation), OpenRate: v(h.OpenRate), BleedFilm: v(h.BleedFilm), PoreHumidity: v(h.Humidity),
	}
}

// Clock turns hours after placing into a clock time.
func (h *History) Clock(hours float64) time.Time {
	return h.Placed.Add(time.Duration(math.Round(hours*3600)) * time.Second)
}

// place returns the entry before a time and the share of the way to the next.
func (h *History) place(hours float64) (i int, share float64) {
	low, high := 0, len(h.Hours)-1
	for high-low > 1 {
		if middle := (low + high) / 2; h.Hours[middle] <= hours {
			low = middle
		} else {
			high = middle
		}
	}
	share = (hours - h.Hours[low]) / (h.Hours[high] - h.Hours[low])
	return low, math.Min(math.Max(share, 0), 1)
}

// reached returns the first time a series passes a level, NaN if it never does.
func reached(hours, values []float64, level float64) float64 {
	for i, v := range values {
		if v >= level {
			if i == 0 {
				return hours[0]
			}
			before := values[i-1]
			return hours[i-1] + (hours[i]-hours[i-1])*(level-before)/(v-before)
		}
	}
	return math.NaN()
}
