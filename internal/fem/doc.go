// Package fem works out how sheets and plates move and what stress that brings, by
// finite elements. It knows no concrete: what a place is made of comes from small
// functions the caller hands in.
//
// In goes a [Mesh] of triangles or quadrilaterals and parts that lie on it:
//
//   - [Sheet] in plane stress, with strain it would have if free, springs along the
//     plane and loads;
//   - [Plate], thin or thick, on any [Ground], with curvature it would have if free;
//   - [Interface], a line across which the two sides may move apart under a law;
//   - [Bed], springs along the plane that may slip;
//   - [PlateJoint], a line across which two plates may step.
//
// [GridMesh] makes meshes between straight lines, [FromTriangles] takes any others,
// [Mesh.Quadratic] gives elements middle nodes, and [Mesh.Cut] parts a mesh along
// lines for an interface.
//
// [NewSystem] puts parts together; [System.Hold], [System.Push] and [System.Spring]
// act on single nodes afterwards. [System.Solve] finds the displacements, by Newton's
// method where a law is not linear, and by a factor or by multigrid as suits the size
// ([Method]). Out come displacements, and from the parts stress, moment and stored
// work at any place ([Sheet.StressAt], [Plate.At]).
//
// A plate that lifts off the ground within an element needs [Plate.GroundSplit] for
// more than three digits of the deflection beyond.
//
// A system that does not settle gives back the best state met and an error that
// names the part and the place, never a NaN.
//
// Values in tables of testdata are met to all printed digits by the same element on
// the same mesh. Stress at an inside corner is singular: ask at a distance, and
// crowd lines towards the corner ([GradedLines]), since without that everything
// converges like h to the power 1.1 only.
//
// It leaves out large rotations, vibration, and volumes.
//
// SI throughout. Displacements along x and y in the plane, deflection w down.
package fem
