package earlyage

import (
	"slabwright/internal/march"
	"slabwright/source"
)

// exactQuantities are the closed forms of heat and moisture.
var exactQuantities = map[string]source.Func{
	"surface step": func(in source.Inputs) float64 {
		return march.HalfSpaceStep(in.Num("x"), in.Num("t"), in.Num("a"), in.Num("Ti"), in.Num("Ts"))
	},
	"film": func(in source.Inputs) float64 {
		return march.HalfSpaceFilm(in.Num("x"), in.Num("t"), in.Num("a"), in.Num("k"), in.Num("h"))
	},
	"flux": func(in source.Inputs) float64 {
		return march.HalfSpaceFlux(in.Num("x"), in.Num("t"), in.Num("a"), in.Num("k"), in.Num("q"))
	},
	"film root": func(in source.Inputs) float64 { return march.FilmRoot(in.Num("Bi"), 1) },
	"film coefficient": func(in source.Inputs) float64 {
		return march.FilmCoefficient(march.FilmRoot(in.Num("Bi"), 1))
	},
	"slab film": func(in source.Inputs) float64 {
		return march.SlabFilm(in.Num("Bi"), in.Num("Fo"), in.Num("place"), 40)
	},
	"damping depth": func(in source.Inputs) float64 { return march.DampingDepth(in.Num("a"), in.Num("P")) },
	"wave share":    func(in source.Inputs) float64 { return march.WaveShare(in.Num("z"), in.Num("a"), in.Num("P")) },
	"wave lag":      func(in source.Inputs) float64 { return march.WaveLag(in.Num("z"), in.Num("a"), in.Num("P")) },
	"contact temperature": func(in source.Inputs) float64 {
		return march.Contact(in.Num("k1"), in.Num("rho1")*in.Num("c1"), in.Num("T1"), in.Num("k2"), in.Num("rho2")*in.Num("c2"), in.Num("T2"))
	},
	"decaying source": func(in source.Inputs) float64 {
		return march.SlabDecayingSource(in.Num("x"), in.Num("t"), in.Num("L"), in.Num("k"), in.Num("rhoc"), in.Num("q0"), in.Num("b"))
	},
	"mean loss": func(in source.Inputs) float64 {
		return march.MeanLoss(in.Num("D")*1e-6, in.Num("L")*1e-3, in.Num("t"))
	},
}
