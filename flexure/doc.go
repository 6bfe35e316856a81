// Package flexure says how a slab on ground bends: under wheels and posts, and
// when its top is colder or drier than its underside.
//
// In go plain numbers (load, contact radius, thickness, modulus, support,
// temperature difference); out come stresses, deflections, lifts and collapse
// loads. Every function is one published closed form; [WheelWorking] and
// [CurlWorking] put the usual ones together as calculations with an independent
// value beside them. They are the hand check of any plate solution.
//
// It leaves out lift-off: every form here but the strip bound by weight assumes
// that slab and ground stay together. It knows no plan and no clock.
//
// Most callers need [WheelWorking], [CurlWorking], [RelativeStiffness] and
// [Bradbury].
//
// SI throughout: metres, pascals, newtons, kelvins; support in N/m³. The forms are
// homogeneous, so any consistent units do unless a function says otherwise.
package flexure
