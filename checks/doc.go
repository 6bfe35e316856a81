// Package checks compares what a slab on ground must bear with what it can: rule by
// rule, each with its clause, how much of the capacity is used, met or not met, and
// the calculation that says so.
//
// In goes an [Input]: the slab, its concrete and ground, the loads that stand and
// drive on it, one kind of joint, its steel and its use, every number with how it is
// known. Out comes a [Result]: rows of checks, the working sheets behind them, and
// the assumptions with what moves when one is wrong. The family of codes (EN, ACI,
// AS) is a value of the input, so two jobs may use different ones side by side.
//
// The forms are those of flexure, steel, restraint and ground; only what belongs to
// the comparison itself (factors of the codes, shear round a post by each code,
// repetitions, surface and exposure classes) is here. It leaves out the layout of
// joints and the early age.
//
// Most callers need [Run], [LeastThickness], [Moves] and [CodeOf].
//
// Inside, N, mm and MPa; facts come in the units of the job file (m, kN, MPa, MN/m³)
// as the comment on each field says.
package checks
