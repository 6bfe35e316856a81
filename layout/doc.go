// Package layout proposes the joints of a slab and looks over those that are drawn.
//
// In go the outline with its holes and fixtures, what the spacing of joints follows
// from (SpacingFacts), how the slab can be placed, what must cross the joints, steel,
// rates and what counts (Brief). Out come alternatives (Propose): joints, block-outs,
// dowels, bars across inside corners, what is done to the mesh, pours, quantities, cost,
// the chance of a crack away from the joints, and warnings each with a mend.
//
// # How joints are found
//
// A slab is laid in a frame: two families of lines, straight and square to one another
// or, for curved and wedge-shaped slabs, rays and arcs (frame). Every joint is a line of
// a family from edge to edge, so no joint stops at the side of a panel. Lines pass
// through what fixes them: inside corners, the sides of pits, the points of the
// diamonds round columns. Which lines meet a corner is a choice (group); lines too near
// to one another become one that bends a little. Between fixed lines free ones are set
// where their gaps are most like the wanted ones and no side of the slab runs close
// beside them, by dynamic programming over places a few centimetres apart (spread). A
// line that would meet an edge under 60 degrees is turned by short legs, or else cut
// back to the line before, which becomes an isolation joint (square).
//
// Every layout is divided into panels by package plan and judged by those alone
// (examine, measure). All wanted gaps are tried in all frames, then one choice after
// another is changed for as long as that helps (search), and last single lines and
// stretches of lines are moved, added and left out at random, steps for the worse less
// and less often (anneal). The order of both comes from the seed.
//
// Places where a hard rule is not met cost more than everything weighed together: no
// sliver, no angle under 60 degrees, no joint that stops at the side of a panel or
// inside one. An inside corner is met by a joint, or by bars where a joint would leave a
// strip narrower than a third of the limit or a panel over 1.5 times as long as wide.
// Weighed are length of joint, proportions, fill and evenness of panels, length over
// the limit, pours and bends (Weights).
//
// It leaves out the thickness, the size of dowels for a load and crack widths (package
// checks), and the replay of the pour: a caller passes that as a function.
package layout
