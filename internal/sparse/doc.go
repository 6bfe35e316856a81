// Package sparse solves large symmetric systems of equations that come from
// meshes. It knows neither elements nor concrete.
//
// In goes which nodes each element joins ([Connectivity]), how many unknowns a
// node has, and the matrices of the elements; out comes the solution. The work
// falls in parts that are kept apart so that each is done only as often as needed:
//
//   - [NewPattern] finds which blocks are not zero and where each element's
//     entries go. Once per mesh.
//   - [Pattern.Assemble] fills a [Matrix]. Once per set of stiffnesses.
//   - [Analyse] orders the nodes by nested dissection and lays out the factor.
//     Once per mesh.
//   - [Symbolic.Factor] finds L with A = L·Lᵀ by fronts of dense blocks, on as many
//     cores as asked. Once per set of stiffnesses; [Factor.Refactor] reuses the
//     memory.
//   - [Factor.Solve] and [Factor.SolveRefined] for any number of right-hand sides;
//     [Factor.Update] after a few springs came or went.
//
// A matrix that is not positive definite is refused with [NotPositive], which
// names the node and unknown. For meshes too large for a factor in memory, and
// for a matrix that differs a little from one already factored, [ConjugateGradients]
// takes any [Preconditioner]: the old [Factor], [Multigrid], or the block diagonal.
//
// Results do not depend on the number of cores, to the last bit.
//
// It leaves out unsymmetric and indefinite matrices, and more than one number of
// unknowns per node in one matrix.
package sparse
