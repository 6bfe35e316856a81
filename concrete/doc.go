// Package concrete follows a mix through time: what its cement is made of, the
// heat it gives, when it sets, how strong, stiff and tight in tension it is at
// any age, how much it shrinks and creeps.
//
// In goes a [Mix] of plain numbers in the units its fields say. Out come
// a [Hydration] (heat, degree of hydration, set, from [Mix.Hydration]), a
// [StrengthModel] of the chosen code ([EN1992], [MC2010], [ACI209], [AS3600]), a
// [Young] concrete that joins the two below three days, a [ShrinkageModel], a
// [CreepModel] and the calculation sheets for each.
//
// Strengths and moduli are in MPa, ages in days, equivalent ages te in hours at
// 21.1 °C, strains are plain numbers (never microstrain), shrinkage is positive.
//
// It leaves out temperature and moisture through the depth (package earlyage) and
// everything in plan. Models that differ by code are values you pass.
package concrete
