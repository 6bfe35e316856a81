// Package restraint says how much tension a slab gets because something stops it
// from shortening: the base it lies on, a neighbour it is tied to, dowels that
// lock, and what a saw cut or a crack does to that tension.
//
// In go plain numbers (strain, modulus, length, friction); out come stresses,
// openings, slips and degrees of restraint. Every function is one published closed
// form; [FrictionWorking] puts the usual ones together as a calculation with an
// elastic check beside the sliding one. It knows no plan and no clock: the strain
// and stiffness come from the history of the concrete, the lengths from the plan.
//
// Most callers need [FrictionWorking], [DragStress], [ElasticBedStress],
// [RestrainedStress], [JointOpening] and [LateralDemand].
//
// SI throughout: metres, pascals, newtons, kelvins; strain as a plain number.
package restraint
