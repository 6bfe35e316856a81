package checks

import (
	_ "embed"
	"fmt"

	"slabwright/ground"
	"slabwright/internal/table"
	"slabwright/source"
	"slabwright/working"
)

//go:embed uses.csv
var usesCSV string

//go:embed exposure.csv
var exposureCSV string

var (
	uses      = table.Read("uses.csv", usesCSV)
	exposures = table.Read("exposure.csv", exposureCSV)
)

// UseClasses returns the classes of use in table order.
func UseClasses() (list []string) {
	for i := range uses.Rows {
		list = append(list, uses.Text(i, "class"))
	}
	return list
}

// ExposureClasses returns the exposure classes a family of codes has here.
func ExposureClasses(code string) (list []string) {
	for i := range exposures.Rows {
		if exposures.Text(i, "code") == code {
			list = append(list, exposures.Text(i, "class"))
		}
	}
	return list
}

// Abrasion is what a use asks of the surface.
type Abrasion struct {
	Class    string  // of EN 13813: AR1 ...
	Wear     float64 // greatest depth of wear in the test of EN 13892-4, µm
	Strength float64 // least cylinder strength, MPa
}

// AbrasionFor returns what a family of codes asks of the surface for a use; ok is
// false for another word.
//
// Source: EN 13813 and BS 8204-2, AS 3600 Table 4.7, ACI 302.1R; see uses.csv.
func AbrasionFor(code, use string) (a Abrasion, ok bool) {
	for i := range uses.Rows {
		if uses.Text(i, "class") == use {
			return Abrasion{uses.Text(i, "wear_class"), uses.Number(i, "wear_um"), uses.Number(i, code)}, true
		}
	}
	return Abrasion{}, false
}

// ExposureStrength returns the least cylinder strength of an exposure class, MPa; ok
// is false for another word.
//
// Source: AS 3600, EN 206 Table F.1, ACI 318-19 Table 19.3.2.1; see exposure.csv.
func ExposureStrength(code, class string) (strength float64, cite source.Citation, ok bool) {
	for i := range exposures.Rows {
		if exposures.Text(i, "code") == code && exposures.Text(i, "class") == class {
			return exposures.Number(i, "strength_MPa"), source.Cite(exposures.Text(i, "source"), exposures.Text(i, "place")).As(source.Memory), true
		}
	}
	return 0, source.Citation{}, false
}

// surface checks the strength against wear and exposure.
func (w *worker) surface() {
	code := w.in.Code.Key
	if a, ok := AbrasionFor(code, w.in.Use.Class); ok {
		cite := map[string]source.Citation{"EN": source.Cite("bs8204", "abrasion classes"), "AS": source.Cite("as3600", "Table 4.7"), "ACI": source.Cite("aci302", "floor classes").As(source.Memory)}[code]
		s := working.Sheet{ID: "wear", Title: "Strength for wear: " + w.in.Use.Class, Basis: []string{
			fmt.Sprintf("EN 13813 class %s: at most %g µm of wear in the test of EN 13892-4 after 2850 turns. Trowelling and curing count as much as strength.", a.Class, a.Wear)}}
		row := Row{ID: s.ID, Group: Surface, Check: s.Title, Demand: a.Strength, Capacity: w.fc, Unit: "MPa", Clause: cite}
		if w.in.Use.Class == "steel wheels" {
			row.Note = "Strength alone is not enough for steel wheels: a hard topping, judged by test."
		}
		w.row(row, s, working.New("f_R", "Least strength for this use", "f_R", a.Strength, "MPa", cite))
	} else {
		w.leaveOut("wear", "no class of use is given")
	}
	if need, cite, ok := ExposureStrength(code, w.in.Use.Exposure); ok {
		s := working.Sheet{ID: "exposure", Title: "Strength for exposure " + w.in.Use.Exposure, Basis: []string{"Cement, water and air content are asked for besides."}}
		w.row(Row{ID: s.ID, Group: Surface, Check: s.Title, Demand: need, Capacity: w.fc, Unit: "MPa", Clause: cite}, s, working.New("f_R", "Least strength for this exposure", "f_R", need, "MPa", cite))
	} else {
		w.leaveOut("exposure", "no exposure class is given")
	}
}

// ground checks the support used against the bearing ratio.
func (w *worker) ground() {
	if !w.has("cbr") {
		w.leaveOut("support of the ground", "no bearing ratio is given to check it against")
		return
	}
	s := working.Sheet{ID: "support", Title: "Support of the ground from its bearing ratio", Basis: []string{"The scatter is a factor of two; a base on top of the subgrade adds some. Measure where it matters."}}
	cbr := w.val("cbr")
	k := ground.SubgradeFromCBR(cbr)
	cite := source.Cite("ian73", "CBR = 6.1·10⁻⁸ k^1.733")
	line := working.New("k_R", "Support that this bearing ratio gives", "(CBR / 0.000000061)^(1/1.733) / 1000", k, "MN/m³", cite, w.put("cbr"))
	if chart, ok := ground.SubgradeFromChart(cbr); ok {
		line = line.Beside("chart of the Portland Cement Association", chart, source.Cite("pca1984", "chart of k and CBR"), "Two fits to a wide scatter.")
	}
	w.row(Row{ID: s.ID, Group: Subgrade, Check: "Support used against that of the bearing ratio", Demand: 1000 * w.k, Capacity: k, Unit: "MN/m³", Clause: cite}, s, line,
		working.New("k_u", "Support used", "1000 · k", 1000*w.k, "MN/m³", cite, w.put("support")))
}
