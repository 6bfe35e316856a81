// Package restraint says how much tension a slab gets because something stops it
// from shortening: the base it lies on, a neighbour it is tied to, dowels that
// lock, and what a saw cut or a crack does to that tension.
//
// Two ways lead to it.
//
// The closed forms take plain numbers (strain, modulus, length, friction) and give
// stresses, openings, slips and degrees of restraint. Each is one published formula;
// [FrictionWorking] puts the usual ones together as a calculation with an elastic check
// beside the sliding one. Most callers need [FrictionWorking], [DragStress],
// [ElasticBedStress], [RestrainedStress], [JointOpening] and [LateralDemand].
//
// [Model.Replay] follows a slab in plan through time. In go its outline, the history of
// each pour ([Concrete] by the hour), the base, lines that open ([Line], [LinesOf]) and
// what holds its edges ([Hold], [HoldsOf]). Out come a dated list of what opened and
// what cracked where, widths, fields of stress with a hand calculation beside them, and
// where the work went. [Samples] replays many members of a [Model.Spread] and tells the
// chance along joints and over the plan.
//
// The slab is a sheet in plane stress of linear triangles. The base holds like a spring
// and slips at a limit. Open lines push when they touch, lock by their roughness until
// they have opened, and bars across them act as springs. Creep is taken in the rate
// form. Where tension averaged over a reach passes the strength, a crack starts and
// follows the stress as long as that drives it; triangles are cut along it and the
// sheet is balanced anew.
//
// [Event.Freed] beside [Event.Needed] and [Beside] are the checks by hand. At inside
// corners and columns the strength is passed over a short length before the work would
// carry a sharp crack: what stands there first is a short crack, and its hour is early.
//
// It leaves out bending, but for tension at a face that the caller gives; softening of
// a crack while it opens, which is sudden here; crushing; friction that falls with
// repeated movement; and steel across cracks other than bars given on a known line.
//
// SI throughout: metres, pascals, newtons, kelvins; strain as a plain number; hours.
package restraint
