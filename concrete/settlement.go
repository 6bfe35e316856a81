package concrete

import (
	_ "embed"
	"math"
	"strconv"

	"slabwright/internal/table"
)

//go:embed dakhil.csv
var dakhilCSV string

var dakhil = readDakhil()

// settlementTable is the printed table: percent[cover][slump][bar].
type settlementTable struct {
	covers, slumps, bars []float64
	percent              [][][]float64
}

func readDakhil() (t settlementTable) {
	t.bars = []float64{4, 5, 6}
	for _, record := range table.Read("dakhil.csv", dakhilCSV).Rows {
		cell := func(i int) float64 {
			v, err := strconv.ParseFloat(record[i], 64)
			if err != nil {
				panic("concrete: dakhil.csv: " + record[i] + " is not a number")
			}
			return v
		}
		if n := len(t.covers); n == 0 || t.covers[n-1] != cell(0) {
			t.covers = append(t.covers, cell(0))
			t.percent = append(t.percent, nil)
		}
		last := len(t.covers) - 1
		if last == 0 {
			t.slumps = append(t.slumps, cell(1))
		}
		t.percent[last] = append(t.percent[last], []float64{cell(2), cell(3), cell(4)})
	}
	return t
}

// SettlementCracking returns the chance, 0 to 1, that fresh concrete cracks over
// a bar as it settles, from laboratory blocks: use it to rank covers, slumps and
// bars, not as a chance on site.
//
//	cover   over the bar, tabulated 19 to 51 [mm]
//	slump   tabulated 51 to 102 [mm]
//	bar     diameter, tabulated 12.7 to 19 [mm]
//
// Linear between the rows in all three; level beyond them.
//
// Source: Dakhil, Cady and Carrier, ACI Journal 72(8) 1975; table from memory.
func SettlementCracking(cover, slump, bar float64) float64 {
	const inch = 25.4
	c, cf := bracket(dakhil.covers, cover/inch)
	s, sf := bracket(dakhil.slumps, slump/inch)
	b, bf := bracket(dakhil.bars, bar/inch*8)
	sum := 0.0
	for i, wi := range [2]float64{1 - cf, cf} {
		for j, wj := range [2]float64{1 - sf, sf} {
			for k, wk := range [2]float64{1 - bf, bf} {
				sum += wi * wj * wk * dakhil.percent[c+i][s+j][b+k]
			}
		}
	}
	return sum / 100
}

// bracket returns the interval of rising points that holds x and how far along
// it x is, held to 0 and 1 beyond the ends.
func bracket(points []float64, x float64) (i int, along float64) {
	for i = 0; i < len(points)-2 && x > points[i+1]; i++ {
	}
	along = (x - points[i]) / (points[i+1] - points[i])
	return i, math.Min(1, math.Max(0, along))
}

// BleedWater returns the water, kg/m², that a slab brings to its surface.
//
//	depth   of the slab [m]
//	share   of the depth that settles, usually 0.005 to 0.01, 0.02 at the most [-]
//
// Source: arithmetic; the shares from memory.
func BleedWater(depth, share float64) float64 { return depth * share * 1000 }

// BleedSettlement returns how far, m, the surface sinks while it bleeds.
func BleedSettlement(depth, share float64) float64 { return depth * share }
