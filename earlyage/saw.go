package earlyage

import (
	_ "embed"
	"math"
	"slices"

	"slabwright/internal/table"
	"slabwright/source"
)

// Saw is a kind of saw with the strength the edge must have so that it does not
// ravel.
type Saw struct {
	Key, Name         string
	Aggregate         string  // soft, medium or hard to cut
	Edge              float64 // compressive strength of the surface zone, MPa
	EdgeLow, EdgeHigh float64
	LeastDepth        float64 // m
	DepthShare        float64 // of the slab
	Source            source.Citation
}

//go:embed saws.csv
var sawTable string

var saws = readSaws()

// Saws returns every row of the table, in its order.
func Saws() []Saw { return slices.Clone(saws) }

func readSaws() (out []Saw) {
	for _, row := range table.Read("saws.csv", sawTable).Records() {
		out = append(out, Saw{Key: row["key"], Name: row["name"], Aggregate: row["aggregate"],
			Edge: number(row["edge_MPa"]), EdgeLow: number(row["edge_low_MPa"]), EdgeHigh: number(row["edge_high_MPa"]),
			LeastDepth: number(row["least_depth_mm"]) / 1000, DepthShare: number(row["depth_share"]),
			Source: source.Cite(row["source"], row["place"]).As(source.How(row["how"]))})
	}
	return out
}

// SawFor returns the saw of a key ("ordinary", "early-entry") for an aggregate
// ("soft", "medium", "hard"); ok is false for an unknown pair.
func SawFor(key, aggregate string) (s Saw, ok bool) {
	for _, s := range saws {
		if s.Key == key && s.Aggregate == aggregate {
			return s, true
		}
	}
	return Saw{}, false
}

// Depth returns the depth of cut in a slab of a thickness, m.
func (s Saw) Depth(thickness float64) float64 {
	return math.Max(s.LeastDepth, s.DepthShare*thickness)
}

// CutDepth returns the depth of a cut that is a share of the slab, in the unit of
// the thickness. An ordinary cut is a quarter (ACI 327R-14), a third on stabilised
// bases and in lengthwise joints.
func CutDepth(thickness, share float64) float64 { return share * thickness }

// SpacingRule returns the joint spacing, m, that is a number of slab thicknesses
// (24 to 36), not above a cap.
//
//	thickness [mm], times [-], cap [m]
//
// Source: CSA A23.1-94 20.2.1, seen in an excerpt.
func SpacingRule(thickness, times, cap float64) float64 {
	return math.Min(times*thickness/1000, cap)
}
