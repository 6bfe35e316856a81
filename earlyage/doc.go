// Package earlyage follows one place of a slab from the truck on: temperature,
// water, set, strength, free strain and stress through the depth of slab, base
// and soil.
//
// In goes a [Column]: the [Concrete] (from a mix by [FromMix]), thickness, the
// [Layer] rows below, clock time and temperature of placing, the weather as a
// function of time, covers with their clock times, bleeding. [Column.Run] gives
// the [History]; [Window] runs a set of members around it and gives the
// [CutWindow]: when the saw can start, when it is too late, with the chances.
// [Members.WindowWorking] writes that down line by line; [Compare] sets other
// starts and saws beside it. [History.PlasticHours] is the fresh slab by
// the hour with the chances of plastic cracks, [Measures] what each measure against
// drying is worth, [History.Plastic] the sum of the drying before set,
// [History.BuiltIn] what the slab keeps from its first day. [LongTerm] gives the
// shrinkage of the section over the years and what is still to come. [FromExposure]
// and [FromSupport] take weather and ground from the packages above.
//
// Times are hours after placing, temperatures °C, stresses and moduli MPa with
// tension positive, strains plain numbers with lengthening positive (shrinkage
// is negative here), equivalent ages hours at 21.1 °C, evaporation kg/m2/h.
//
// Known to be off: the diffusivity of humidity is that of mature concrete, so the
// skin of a slab that is left open dries too fast in its first day (a layer that
// comes to its strength only crazes, see History.CrazedFrom); and in the months
// after, curl leads the mean shrinkage more than in the slabs of Bissonnette et
// al. (ACI Materials Journal 104(3) 2007), where both kept step. Creep of the first
// day is that of the code's youngest loading age. How all of it stands against
// measured slabs is on docs/measured.md.
//
// It leaves out everything in plan (joints, corners, fixtures, cracks: packages
// restraint and flexure), rain on the slab and reinforcement.
package earlyage
