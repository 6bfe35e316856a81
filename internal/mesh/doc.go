// Package mesh fills an outline with well-shaped triangles. It knows no concrete.
//
// In goes a [Domain]: outer rings, holes, lines that must show up as edges of the
// mesh (they may cross, touch, coincide or end inside), single points, and how
// large a triangle may be where ([Uniform], [Graded] or any [Sizing]).
//
// Out comes a [Mesh]: points, triangles turning left, the neighbour across each
// side, which input each side lies on, and the region each triangle belongs to.
// [Build] makes it; [Mesh.Move] shifts one line and changes the mesh only near
// the old and the new place; [Mesh.Locate] finds the triangle under a point;
// [Mesh.Line] lists the sides on a line in its order and [Mesh.Slit] doubles the
// points there, so that the two sides may move apart. A grid of rectangles under
// one size comes out in regular triangles, which [Mesh.Quads] pairs.
//
// What holds for every mesh made here:
//   - the triangles cover the outline less its holes, each with positive area by
//     exact arithmetic;
//   - every line lies along edges of the mesh, cut where it leaves the outline;
//   - no triangle has a point inside its circumcircle that it can see past the
//     lines (constrained Delaunay);
//   - no side is longer than the size asked for at the middle of its triangle;
//   - no angle is below [Domain.MinAngle] (26 degrees) except between two lines or
//     sides that meet at less than 60 degrees (there at least 0.45 of that), and
//     between ones nearer to each other than about [Domain.Finest];
//   - the same input gives the same mesh.
//
// The signs that decide everything are exact ([Orient], [InCircle]); the places
// of new points are rounded.
//
// It leaves out curved edges, three dimensions, and triangles stretched on
// purpose.
package mesh
