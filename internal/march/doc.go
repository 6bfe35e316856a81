// Package march follows a quantity that diffuses along one line through time:
// temperature through a slab and the soil under it, or pore humidity through a
// drying slab. It knows no concrete.
//
// In go a [Problem]: a [Grid] of nodes (a node lies on every layer boundary, so
// each interval has one material and its conductance is exact), the capacity of
// each node, the conductance of each interval, what happens at the two ends
// ([Held], [Film], [Flux], [Sealed] or any [End]), and if wanted a local process
// that releases heat as it ripens ([Local]) and a diffusivity that depends on the
// value ([Potential]).
//
// Out comes a [Marcher], which holds the values at the nodes and moves them
// forward: [Marcher.Euler] (first order, very damped), [Marcher.Step] (TR-BDF2,
// second order, L-stable) and [Marcher.Advance] (TR-BDF2 with the step chosen by
// the estimated error). No step allocates memory. The balance of what is stored,
// released and let through the ends is kept and closes to the tolerance of the
// Newton iteration: see [Marcher.Imbalance].
//
// Exact solutions to compare with are in exact.go.
//
// It leaves out convection, more than one dimension and moving boundaries.
package march
