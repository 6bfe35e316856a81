package concrete

// Composition is what a Portland cement is made of, as shares of its mass
// (0.60, not 60 %), and how finely it is ground.
type Composition struct {
	C3S, C2S, C3A, C4AF float64 // clinker compounds, share of cement mass
	SO3                 float64 // sulfate, share
	FreeCaO             float64 // free lime, share
	MgO                 float64 // magnesia, share
	Na2Oeq              float64 // alkali as Na2O equivalent, share
	Blaine              float64 // fineness, m²/kg
}

// Binder is a cement with what replaces part of it, as shares of the mass of all
// binder: Cement + Slag + Ash + SilicaFume + Filler = 1.
type Binder struct {
	Composition
	Cement     float64 // Portland clinker cement with its gypsum, share of binder
	Slag       float64 // ground granulated blast-furnace slag, share
	Ash        float64 // fly ash, share
	AshCaO     float64 // CaO in the fly ash, share of the ash
	SilicaFume float64 // share
	Filler     float64 // limestone and other inert fines counted as binder, share
}

// Bogue returns the clinker compounds of a cement from its oxides, all in mass
// per cent of cement, as on a mill certificate.
//
//	cao, sio2, al2o3, fe2o3, so3   oxides [%]
//
// The four compounds are potential ones: they assume equilibrium in the kiln and
// are commonly off by several points for C3S and C2S. The form holds for
// Al2O3/Fe2O3 of 0.64 or more; below that the clinker has no C3A and another
// form applies, for which ok is false.
//
// Source: ASTM C150 annex (Bogue), coefficients from memory.
func Bogue(cao, sio2, al2o3, fe2o3, so3 float64) (c3s, c2s, c3a, c4af float64, ok bool) {
	c3s = 4.071*cao - 7.600*sio2 - 6.718*al2o3 - 1.430*fe2o3 - 2.852*so3
	c2s = 2.867*sio2 - 0.7544*c3s
	c3a = 2.650*al2o3 - 1.692*fe2o3
	c4af = 3.043 * fe2o3
	return c3s, c2s, c3a, c4af, al2o3 >= 0.64*fe2o3
}
