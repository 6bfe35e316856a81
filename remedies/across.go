package remedies

import (
	"fmt"

	"slabwright/flexure"
	"slabwright/source"
	"slabwright/working"
)

// Across says what a crack still passes of a wheel from one side to the other, and how
// its width stands against the widths that are usual for its exposure. ok is false
// where the width is not known or the finding is no line.
func Across(in Situation) (text string, sheet working.Sheet, ok bool) {
	if in.Width == nil || in.kind() != "line" || in.Pattern == "shorts" {
		return "", sheet, false
	}
	limit, what := widthLimit(in)
	sheet = working.Sheet{ID: "across-" + in.Finding, Title: "What crack " + in.Finding + " still carries across", Basis: []string{
		"The width at the surface is taken as the opening between the faces; edges worn by wheels make it too wide.",
		"Stones only: bars or mesh across it carry more. It does not hold for a crack that rocks or stands in a step."}}
	width := working.New("w", "width", "", 1000**in.Width, "mm", source.Cite("own", "as measured"))
	aci := source.Cite("aci224", "table 4.1 (widths)")
	sheet.Add(width, working.New("w_l", "width that is usual for "+what, "", 1000*limit, "mm", aci))
	compared := "above"
	if *in.Width <= limit+slack {
		compared = "within"
	}
	text = fmt.Sprintf("Its width of %s mm is %s the %s mm usual for %s.", millimetres(*in.Width), compared, millimetres(limit), what)
	if in.Rocking == "strong" || more(in.Step, bigStep) {
		return text + " It rocks or stands in a step, so its stones carry little across.", sheet, true
	}
	left := InterlockLeft(*in.Width)
	sheet.Add(working.New("LTE", "deflection of the far side over that of the loaded side", "", 100*left, "%", source.Cite("own", "curve through the points of Colley and Humphrey 1967, as quoted"), working.In("w", 1000**in.Width, "mm", "")))
	return text + fmt.Sprintf(" By its width alone its stones still pass on about %.0f %% of the movement under a wheel to the other side.", 10*float64(int(10*left+0.5))), sheet, true
}

// InterlockLeft is the load transfer efficiency by deflection that the stones of a crack
// keep by its width (m), 0 to 1, for a wheel whose radius is a fifth of the radius of
// relative stiffness.
//
// Source: [flexure.InterlockStiffness] and [flexure.TransferEfficiency].
func InterlockLeft(width float64) float64 {
	const radius = 0.2
	return flexure.TransferEfficiency(flexure.InterlockStiffness(width, 1, 1), radius)
}

// widthLimit is the width at the surface that is usual for an exposure, m, and what
// for. ACI 224R-01 table 4.1, from memory; it is a guide for reinforced concrete, not a
// limit at which a slab on ground stops working.
func widthLimit(in Situation) (float64, string) {
	switch {
	case in.Salt:
		return 0.00018, "de-icing salt"
	case in.Exposure == "indoor":
		return 0.00041, "dry air"
	}
	return 0.00030, "damp air and soil"
}
