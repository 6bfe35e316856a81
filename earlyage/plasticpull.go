package earlyage

import (
	_ "embed"
	"math"

	"slabwright/internal/table"
)

//go:embed plastic_pull.csv
var pullTable string

// pullValue is a row of the table of the plastic pull.
var pullValue = func() map[string]float64 {
	values := map[string]float64{}
	for _, row := range table.Read("plastic_pull.csv", pullTable).Records() {
		values[row["key"]] = number(row["value"])
	}
	return values
}()

// FreshStrength returns the tensile strength of fresh concrete in kPa: it grows by
// a steady share with equivalent age, eightfold from placing to initial set and
// some twelvefold from there to final set. Before initial set it is hardly more
// than cohesion.
//
//	toInitial   share of the equivalent age at initial set reached, 0 to 1
//	toFinal     share of the way from initial to final set, 0 to 1
//
// Own model. Only its order of size is known: a few kPa when placed, ten to twenty
// about initial set. A mix may be off by a factor of two either way.
func FreshStrength(toInitial, toFinal float64) float64 {
	a, b, c := pullValue["strength_placed"], pullValue["strength_initial"], pullValue["strength_final"]
	return a * math.Pow(b/a, held(toInitial)) * math.Pow(c/b, held(toFinal))
}

// SuctionPerWater returns the rise of capillary suction, kPa, for each kg/m2 drawn
// out of the concrete itself. The stiffer the skeleton, the less it gives way and
// the sooner the menisci bend: it goes with [FreshStrength], so that before initial
// set the concrete stands the same loss of water at any age.
//
// Own model.
func SuctionPerWater(toInitial, toFinal float64) float64 {
	return pullValue["suction_initial"] * FreshStrength(toInitial, toFinal) / pullValue["strength_initial"]
}

// SuctionPull returns the level tension, kPa, that a suction brings into a layer
// that is held in plan and free to sink: s(1-2ν)/(1-ν).
//
//	suction   of the pore water [kPa]
//	poisson   of the drained skeleton [-]
//
// Source: elastic porous layer without level strain and without change of upright
// stress; mechanics (textbook of soil mechanics, drying cracks).
func SuctionPull(suction, poisson float64) float64 { return suction * (1 - 2*poisson) / (1 - poisson) }

func held(share float64) float64 { return math.Min(1, math.Max(0, share)) }

// pull follows the capillary suction in the surface of a fresh slab and the
// tension it brings, from placing to final set.
//
// Water drawn out of the concrete bends the menisci between the grains and pulls
// the surface together; a film of water, risen or sprayed on, lets them go slack.
// The suction cannot pass the pressure at which air enters. A float or trowel
// closes what has opened as long as initial set is not reached.
//
// Own model, made to agree with three published statements: at 1.0 kg/m2/h (ACI
// 305R) a usual slab in the heat stands about an even chance when nothing is done;
// half that rate does the same to a mix that bleeds little (ACI 305R); and below
// 0.5 kg/m2/h a mix that bleeds as usual is safe, because its bleed water keeps
// up. Measured early shrinkage likewise starts when evaporation passes about
// 0.5 kg/m2 of bleed water (a passage attributed to Holt and Leivo, Cement and
// Concrete Composites 26, 2004; seen in an excerpt).
type pull struct {
	Suction  float64 // kPa
	Tension  float64 // kPa
	Strength float64 // kPa
	Worst    float64 // largest tension over strength since placing or the last floating
}

// step moves the pull on by a step.
//
//	drawn     water drawn out of the concrete in the step [kg/m2]
//	wet       a film stands on the surface at its end, or it is kept wet
//	toInitial, toFinal   as in [FreshStrength], at the end of the step
func (p *pull) step(drawn float64, wet bool, toInitial, toFinal float64) {
	p.Strength = FreshStrength(toInitial, toFinal)
	if wet {
		p.Suction = 0
	} else {
		p.Suction = math.Min(pullValue["air_entry"], p.Suction+SuctionPerWater(toInitial, toFinal)*drawn)
	}
	p.Tension = SuctionPull(p.Suction, pullValue["poisson"])
	p.Worst = math.Max(p.Worst, p.Tension/p.Strength)
}

// float closes what has opened, before initial set.
func (p *pull) float() { p.Suction, p.Tension, p.Worst = 0, 0, 0 }

// chance is the chance that the surface has torn by now.
func (p *pull) chance() float64 { return CrackChance(p.Worst, pullValue["variation"]) }
