package ground

import (
	_ "embed"
	"fmt"
	"strconv"

	"slabwright/internal/table"
)

//go:embed subbase_untreated.csv
var untreatedCSV string

//go:embed subbase_cement.csv
var cementTreatedCSV string

var subbases = map[string]table.Table{
	"untreated":      table.Read("subbase_untreated.csv", untreatedCSV),
	"cement-treated": table.Read("subbase_cement.csv", cementTreatedCSV),
}

// ModulusOnSubbase returns the modulus of subgrade reaction on top of a subbase,
// MN/m³, linear between the rows and columns of the table.
//
//	kind        "untreated" or "cement-treated"
//	subgrade    modulus below it [MN/m³]
//	thickness   of the subbase [m]
//
// Source: Portland Cement Association tables; from memory.
func ModulusOnSubbase(kind string, subgrade, thickness float64) (float64, error) {
	t, ok := subbases[kind]
	if !ok {
		return 0, fmt.Errorf("subbase %q is not known; choose untreated or cement-treated", kind)
	}
	const inch = 0.0254
	moduli := t.Numbers("k_pci")
	var inches []float64
	for _, h := range t.Head[1:] {
		v, err := strconv.ParseFloat(h, 64)
		if err != nil {
			panic("ground: table " + t.Name + ": head " + h)
		}
		inches = append(inches, v)
	}
	i, alongK, ok := bracket(moduli, subgrade/PoundsPerCubicInch)
	if !ok {
		return 0, fmt.Errorf("subgrade modulus %.3g MN/m³ is outside the %s table, %.3g to %.3g MN/m³; give the modulus on the subbase itself",
			subgrade, kind, moduli[0]*PoundsPerCubicInch, moduli[len(moduli)-1]*PoundsPerCubicInch)
	}
	j, alongH, ok := bracket(inches, thickness/inch)
	if !ok {
		return 0, fmt.Errorf("subbase thickness %.3g m is outside the %s table, %.3g to %.3g m; is it in mm?",
			thickness, kind, inches[0]*inch, inches[len(inches)-1]*inch)
	}
	return subbaseCell(t, i, j, alongK, alongH)
}

// subbaseCell is the bilinear value within a cell; a corner that counts and is not
// in the table is an error.
func subbaseCell(t table.Table, i, j int, alongK, alongH float64) (float64, error) {
	sum := 0.0
	for a, wa := range [2]float64{1 - alongK, alongK} {
		for b, wb := range [2]float64{1 - alongH, alongH} {
			if wa*wb == 0 {
				continue
			}
			text := t.Rows[i+a][1+j+b]
			v, err := strconv.ParseFloat(text, 64)
			if err != nil {
				return 0, fmt.Errorf("the subbase table has no value for so stiff a subgrade with so thick a subbase; take a thinner one")
			}
			sum += wa * wb * v
		}
	}
	return sum * PoundsPerCubicInch, nil
}
