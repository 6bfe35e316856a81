// Package draw holds one drawing model for paper and screen: lines, polygons,
// text, hatches, dashes and line ends in groups, written as SVG or put on a PDF
// page from the same [Scene].
//
// Geometry stands in the user's own units and goes through the transform of its
// group; pen widths, dash lengths, hatch pitch and letter heights are millimetres
// on paper and do not scale. A [Chart] builds a scene of curves, bands, limit
// lines and event marks.
//
// It knows nothing of what the lines mean. The functions most people need are
// [New], [Scene.SVG], [Scene.PDF] and [Chart.Scene].
package draw
