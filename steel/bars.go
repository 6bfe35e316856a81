package steel

import (
	_ "embed"
	"math"

	"slabwright/internal/table"
)

//go:embed bars.csv
var barsCSV string

//go:embed mesh.csv
var meshCSV string

var (
	bars   = table.Read("bars.csv", barsCSV)
	meshes = table.Read("mesh.csv", meshCSV)
)

// CircleArea returns the area of a round bar, mm² for a diameter in mm.
func CircleArea(diameter float64) float64 { return math.Pi * diameter * diameter / 4 }

// Bar is one row of the table of bars.
type Bar struct {
	Designation string
	Diameter    float64 // [mm]
	Area        float64 // nominal [mm²]
}

// FindBar returns a bar by its designation: "12" for 12 mm, "No. 4" for a US bar;
// ok is false for another word.
func FindBar(designation string) (b Bar, ok bool) {
	i := bars.Find(designation)
	if i < 0 {
		return Bar{}, false
	}
	return Bar{designation, bars.Number(i, "diameter_mm"), bars.Number(i, "area_mm2")}, true
}

// Bars returns every bar in table order.
func Bars() (list []Bar) {
	for i := range bars.Rows {
		list = append(list, Bar{bars.Text(i, "designation"), bars.Number(i, "diameter_mm"), bars.Number(i, "area_mm2")})
	}
	return list
}

// Mesh is one row of the table of welded meshes, the same in both directions.
type Mesh struct {
	Designation string
	Wire, Pitch float64 // [mm]
	Area        float64 // each way, as printed [mm²/m]
}

// FindMesh returns a mesh by its designation, such as "SL82" or "A252"; ok is false
// for another word.
func FindMesh(designation string) (m Mesh, ok bool) {
	i := meshes.Find(designation)
	if i < 0 {
		return Mesh{}, false
	}
	return Mesh{designation, meshes.Number(i, "wire_mm"), meshes.Number(i, "pitch_mm"), meshes.Number(i, "area_mm2_per_m")}, true
}

// Meshes returns every mesh in table order.
func Meshes() (list []Mesh) {
	for i := range meshes.Rows {
		m, _ := FindMesh(meshes.Text(i, "designation"))
		list = append(list, m)
	}
	return list
}

// AreaPerMetre returns the steel of bars at a spacing, mm²/m.
func AreaPerMetre(diameter, spacing float64) float64 { return CircleArea(diameter) * 1000 / spacing }
