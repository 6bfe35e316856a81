package climate

import (
	_ "embed"
	"encoding/csv"
	"math"
	"strconv"
	"strings"

	"slabwright/plan"
)

//go:embed shade_wind.csv
var windShelterCSV string

// windShelter is the table of wind behind walls and fences, rising in distance.
var windShelter = func() (rows [][3]float64) {
	r := csv.NewReader(strings.NewReader(windShelterCSV))
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil {
		panic("climate: shade_wind.csv: " + err.Error())
	}
	for _, record := range all[1:] {
		var row [3]float64
		for i := range row {
			if row[i], err = strconv.ParseFloat(record[i], 64); err != nil {
				panic("climate: shade_wind.csv: " + err.Error())
			}
		}
		rows = append(rows, row)
	}
	return rows
}()

// WindBehind returns the share of the open wind felt on the lee side of a long
// wall or fence.
//
//	heights   distance behind it over its height
//	porous    share of it open to the wind, 0 for a wall; 0.5 and more is read as half open
//
// Common practice for windbreaks, no source: good enough to say whether a fence
// helps, not to give up the measurement at the slab.
func WindBehind(heights, porous float64) float64 {
	p := math.Min(1, math.Max(0, porous/0.5))
	at := func(row [3]float64) float64 { return (1-p)*row[1] + p*row[2] }
	last := len(windShelter) - 1
	if heights >= windShelter[last][0] {
		return 1
	}
	i := 0
	for i < last-1 && heights > windShelter[i+1][0] {
		i++
	}
	a, b := windShelter[i], windShelter[i+1]
	share := math.Max(0, heights-a[0]) / (b[0] - a[0])
	return at(a) + share*(at(b)-at(a))
}

// windFan is how far the wind swings about its bearing, degrees to either side, and
// the bearings looked at. Own judgement.
const (
	windSwing    = 30
	windBearings = 7
)

// WindAt returns the share of the open wind felt at a point of the slab: looking
// into the wind over the swing of its bearing, the wall or fence that helps most
// counts. What hangs clear of the ground by more than [SlabWindHeight] is blown
// under and shelters nothing.
//
//	p      the point
//	from   bearing the wind comes from, clockwise from north [degrees]
func (s Surroundings) WindAt(p plan.Point, from float64) float64 {
	sum := 0.0
	for i := range windBearings {
		swing := windSwing * (2*float64(i)/(windBearings-1) - 1)
		least, toward := 1.0, s.toward(from+swing)
		for _, o := range s.Obstacles {
			if o.Under > SlabWindHeight {
				continue
			}
			if over := o.over(p, toward); len(over) > 0 {
				least = math.Min(least, WindBehind(over[0].from/o.Height, o.Porous))
			}
		}
		sum += least
	}
	return sum / windBearings
}

// windAnyway is the share of the wind at a point where nobody knows where it comes
// from: the mean over all bearings.
func (s Surroundings) windAnyway(p plan.Point) float64 {
	const bearings = 24
	sum := 0.0
	for i := range bearings {
		sum += s.WindAt(p, 360*float64(i)/bearings)
	}
	return sum / bearings
}
