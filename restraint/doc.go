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
// chance along joints and over the plan; [Model.Quick] makes a model coarse enough for
// that. [Model.Stress] finds the state at one hour by one search, for looking at a layout,
// and [Model.Drag] does so while a joint is moved about.
//
// The slab is a sheet in plane stress of linear triangles. The base holds like a spring
// and slips at a limit. Open lines push when they touch, lock by their roughness until
// they have opened, and bars across them act as springs. Creep is taken in the rate
// form. A crack starts, runs on, or opens a groove where two things hold: tension,
// averaged over a reach, passes the strength, and the work that the opening sets free is
// what tearing takes (Leguillon, European Journal of Mechanics A/Solids 21, 2002; from
// memory). It follows the stress as long as that drives it; triangles are cut along it
// and the sheet is balanced anew. Steps in which much cracks or work is missed are halved.
//
// [Event.Freed] beside [Event.Needed], [Ledger.Left] and [Beside] are the checks by hand.
// Of joints that friction alone works, few open: between those that have lie one to two
// release lengths ([CrackSpacing]), and once the concrete has grown the drag of what is
// left between opens no more. Temperature, curl and drying through the seasons open the
// others; no figures for shares of joints open by day were found in print to check against.
// Bars of usual size hold a new panel sideways to an old one by about a quarter of full
// restraint, so it cracks after weeks to months of drying, not in its first days.
//
// It leaves out bending, but for tension at a face, and energy that curl gives to a crack,
// which the caller puts into [Concrete.Face] and [Concrete.Fracture]; softening of a crack
// while it opens, which is sudden here; crushing; friction that falls with repeated
// movement; and steel across cracks other than bars given on a known line, so that slabs
// with continuous steel are not its field.
//
// SI throughout: metres, pascals, newtons, kelvins; strain as a plain number; hours.
package restraint
