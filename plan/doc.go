// Package plan holds the slab as shapes: outline, fixtures, joints, bars and
// dowels in plan, the panels between joints (derived), and the relations between
// a finding and all of these.
//
// In go the shapes of a job file; out come panels (Panels), checks of the shapes
// (Check) and relations (Relate): distances, angles, what a line starts at, stops
// at and runs over. Nothing here knows concrete or time.
package plan
