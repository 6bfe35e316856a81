// Package steel knows the bars, meshes and dowels of a slab on ground: their
// sizes, what a dowel bears and how stiff a dowelled joint is, how much steel
// holds a crack closed and how wide cracks in a reinforced slab open.
//
// In go plain numbers: mm, N, MPa, unless a comment says that any consistent
// units do. Out come forces, areas, widths and the rows of the published tables.
// Most callers need [BearingStress], [GroupShare], [DowelShearStiffness],
// [MinimumSteelEN], [CrackWidthEN] and [CheckAlignment].
//
// It leaves out the slab itself: loads, relative stiffness and restraint come as
// arguments.
package steel
