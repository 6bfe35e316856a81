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
// A pour has many facts that nobody knows exactly: [Doubt] holds their ranges and takes
// facts of the job by [Doubt.Given], [Pour.Unknowns] lists what is left open. What was
// measured at the slab afterwards ([Observed]: logged temperatures, set, cylinders, trial
// cuts) weighs the members, and [Members.Calibration] says how far that moved the window
// and where it contradicts the pour. [Members.Sensitivities] says which unknown moves a
// window most, [PanelWindows] gives the window of each panel of a long pour and
// [BestCutOrder] the order of cutting. CutWindow.Curve is the chance of a crack elsewhere
// by the time of the cut.
//
// Steps are minutes on the first day and grow to a week after a year, so that five years
// take a thousand. After the first fortnight the weather is that of mean days, later
// mean weeks: the seasons are kept, the swing of the day and its stresses are not.
// Heat and water close to a millionth whatever lies on the slab: see [Balance].
//
// Known to be off: in the months after placing curl leads the mean shrinkage by up to
// 0.42 of their final values, where both kept step in the slabs of Bissonnette et al.
// (ACI Materials Journal 104(3) 2007). Pores of the young slab hold and pass more water
// than old ones ([WaterCapacity], [DiffusivityAgeing]), both from memory and not compared
// with a slab in its first day. A skin that comes to its strength crazes for whole
// steps, see History.CrazedFrom. Creep of the first day is that of the code's youngest
// loading age. How all of it stands against measured slabs is on docs/measured.md.
//
// It leaves out everything in plan (joints, corners, fixtures, cracks: packages
// restraint and flexure), rain on the slab and reinforcement.
package earlyage
