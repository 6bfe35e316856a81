// Package flexure says how a slab on ground bends: under wheels and posts, and
// when its top is colder or drier than its underside.
//
// Two ways lead to it.
//
// The closed forms take plain numbers (load, contact radius, thickness, modulus,
// support, temperature difference) and give stresses, deflections, lifts and collapse
// loads. Each is one published form; [WheelWorking] and [CurlWorking] put the usual
// ones together as calculations with an independent value beside them. Most callers
// need these two, [RelativeStiffness], [Bradbury] and [EdgeLiftOf]. All but the lift of
// an edge assume that slab and ground stay together.
//
// [Plate] is the slab in plan: outline, openings and joints of the plan, support that
// may differ from place to place with voids, weight, warp, any loads anywhere, and what
// each joint passes on ([Transfer]). The ground pushes and cannot pull. [Plate.Solve]
// gives a [Bent]: deflections, moments, stress of both faces, pressure, greatest values
// with their places, the balance of forces, load transfer and the force of every dowel;
// [Bent.At] asks at a place, [Bent.Field] is for drawing, and [Bent.Working] sets the
// closed forms beside it. [Plate.Ready], [Ready.Bend] and [Ready.Moved] are for loads
// and joints that are dragged. A contact that does not settle is an [Unsettled] with
// the last state.
//
// Plates are thin or thick ([Theory]); every figure says which. Elements are rectangles
// where the plan runs along the axes, triangles elsewhere.
//
// It leaves out cracking and what follows it; friction below and the push of panels
// that turn against each other; ground that spreads loads sideways (springs stand each
// for itself); and the clock: modulus and warp are those of one moment.
//
// SI throughout: metres, pascals, newtons, kelvins; support in N/m³; deflection down.
// The closed forms are homogeneous, so any consistent units do unless a function says
// otherwise.
package flexure
