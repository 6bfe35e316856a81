// Package ground is what a slab lies on: how hard it is to slide over, how it
// yields under load, and how it holds and leads heat.
//
// In go names of the published tables and plain numbers: MN/m³ for the modulus of
// subgrade reaction, metres, W/(m K). Out come values with their ranges and how they
// are known. Most callers need [FrictionOf], [SubgradeFromCBR],
// [ModulusOnSubbase], [SoilOf] and the record [Support].
//
// It leaves out the slab and the movement: friction against slip, curl and wheels
// belong to restraint and flexure.
package ground
