package checks

import (
	_ "embed"
	"fmt"
	"math"

	"slabwright/flexure"
	"slabwright/internal/table"
	"slabwright/restraint"
	"slabwright/source"
	"slabwright/steel"
	"slabwright/working"
)

//go:embed transfer.csv
var transferCSV string

var transferTable = table.Read("transfer.csv", transferCSV)

// StressCarried returns the stress on the far side of a joint over that on the near
// side, from the same ratio of deflections. Stress crosses much worse: at 0.83 of
// the deflection only 0.37 of the stress.
//
//	deflection   load transfer efficiency by deflection, 0 to 1   [–]
//
// Source: our own plate solutions at a contact radius of 0.2 l, between them a
// straight line.
func StressCarried(deflection float64) float64 {
	return interpolate(transferTable.Numbers("deflection"), transferTable.Numbers("stress"), deflection)
}

const steelModulus, steelPoisson = 200000.0, 0.3

// movement is the share of the free movement that the base lets through.
// Source: AASHTO Guide 1993, from memory.
func movement(base string) float64 {
	if base == "stabilised" {
		return 0.65
	}
	return 0.80
}

// joints works out how far joints open and what they pass on, and checks openings,
// filler and dowels.
func (w *worker) joints() {
	w.jointOpening()
	w.jointTransfer()
	if w.in.Joint.Dowels != nil {
		w.dowelSize()
		w.dowelBearing()
	}
}

// jointOpening checks the opening against what the transfer in use can stand.
func (w *worker) jointOpening() {
	c := movement(w.in.Ground.Base)
	alpha, dT, eps := w.val("expansion"), w.val("cooling"), w.val("shrinkage")
	w.opening = restraint.JointOpening(c, 1000*w.val("spacing"), alpha, dT, eps/1e6)
	s := working.Sheet{ID: "joint-opening", Title: "Opening of the joints", Basis: []string{"Mean of joints that all work; where some have not cracked below their groove, the others take their movement."}}
	aashto := source.Cite("aashto1993", "joint opening")
	s.Add(working.New("ΔL", "Opening of a working joint", "1000 · C · S · (α · ΔT + ε / 10⁶)", w.opening, "mm", aashto,
		working.In("C", c, "–", "share let through by a "+w.in.Ground.Base+" base"), w.put("spacing"), w.put("expansion"), w.put("cooling"), w.put("shrinkage")).
		Beside("bound: nothing held by the base", w.opening/c, source.Cite("mechanics", "free shortening"), "The base holds back a share of the movement."))
	limit, clause, words := openingLimit(w.in.Joint.Transfer)
	if limit == 0 {
		w.res.Sheets = append(w.res.Sheets, s)
		w.leaveOut("joint opening", "a joint that is "+string(w.in.Joint.Transfer)+" has no limit of opening here")
	} else {
		row := Row{ID: s.ID, Group: Joints, Check: "Opening of the joints against " + words, Demand: w.opening, Capacity: limit, Unit: "mm", Clause: clause}
		if w.opening > limit {
			row.Note = fmt.Sprintf("Joints closer than %.1f m, or dowels.", restraint.JointSpacingFor(limit, c, alpha, dT, eps/1e6)/1000)
		}
		w.row(row, s, working.New("w_lim", "Widest opening for "+words, "w_lim", limit, "mm", clause))
	}
	w.filler()
}

// openingLimit is the widest opening at which a transfer still works, mm; 0: none
// is known.
func openingLimit(t Transfer) (float64, source.Citation, string) {
	switch t {
	case Interlock, Keyed:
		return steel.InterlockUsableOpening(), source.Cite("colley1967", "as quoted on a contractor's page"), "interlock of the two faces"
	case Dowelled:
		return 6.4, source.Cite("huang", "limits of joint opening"), "dowels"
	}
	return 0, source.Citation{}, ""
}

// filler checks the groove against what its filler can stretch.
func (w *worker) filler() {
	if !w.has("filler") || !w.has("fill_width") {
		w.leaveOut("filler", "what the filler takes, or the width of its groove, is not given")
		return
	}
	s := working.Sheet{ID: "filler", Title: "Filler of the joints", Basis: []string{"All the opening comes after filling; filled later, it is less."}}
	need := restraint.FillerWidth(w.opening, w.val("filler"))
	iso := source.Cite("iso11600", "classes of movement")
	s.Add(working.New("W_R", "Width the filler needs", "ΔL / M", need, "mm", iso, derived("ΔL", w.opening, "mm", "opening of the joint"), w.put("filler")))
	w.row(Row{ID: s.ID, Group: Joints, Check: "Width of the filled groove", Demand: need, Capacity: w.val("fill_width"), Unit: "mm", Clause: iso}, s)
}

// jointTransfer finds the share of a load's stress that the joint takes to the other
// side.
func (w *worker) jointTransfer() {
	s := working.Sheet{ID: "transfer", Title: "What the joint passes on", Basis: []string{"The share is of the stress at the edge of the slab, less than of the deflection."}}
	j := w.in.Joint
	switch {
	case w.has("transfer"):
		w.share = w.val("transfer")
		return
	case j.Transfer == NoTransfer:
		return
	case j.Dowels == nil:
		share, opening := steel.InterlockDesignTransfer()
		w.share = share
		line := working.New("T", "Share passed on by the two faces, joint open no more than 1.5 mm", "T", share, "–", source.Cite("colley1967", "design value as quoted on a contractor's page"))
		if w.opening > opening && j.Transfer == Interlock {
			w.share = 0
			line = working.New("T", "Passed on by the two faces: nothing, the joint opens more than 1.5 mm", "T", 0, "–", source.Cite("colley1967", "design value as quoted on a contractor's page"))
		}
		s.Add(line)
	default:
		s.Add(w.dowelTransfer()...)
	}
	w.res.Sheets = append(w.res.Sheets, s)
}

// dowelTransfer works the share out from the stiffness of the dowelled joint.
func (w *worker) dowelTransfer() []working.Line {
	const closed = 0.1 // mm: a joint less open than that is worked as if it were
	d, z := w.val("dowel_diameter"), math.Max(w.opening, closed)
	k, spacing := w.val("dowel_support"), w.val("dowel_spacing")
	one := steel.DowelShearStiffness(k, d, steelModulus, steelPoisson, z)
	beta, inertia := steel.RelativeStiffness(k, d, steelModulus), steel.Inertia(d)
	bed := steel.BeddingStiffness(k, d, steelModulus, z)
	gap := steel.GapStiffness(d, steelModulus, steelPoisson, z)
	ratio := one / spacing / (w.k * w.l)
	const radius = 0.2
	lte := flexure.TransferEfficiency(ratio, radius)
	carried := StressCarried(lte)
	w.effLTE, w.share = lte, carried/(1+carried)
	friberg, nishizawa := source.Cite("friberg1940", ""), source.Cite("friberg1940", "stiffness as Tabatabaie and Barenberg 1978").As(source.Memory)
	es, dia, opening := working.In("E_s", steelModulus, "MPa", "modulus of the bar"), w.put("dowel_diameter"), derived("z", z, "mm", "opening of the joint, at least 0.1")
	wl := derived("l", w.l, "mm", "radius of relative stiffness at the section sheet")
	return []working.Line{
		working.New("I", "Second moment of the bar", "π · d⁴ / 64", inertia, "mm⁴", source.Cite("mechanics", ""), dia),
		working.New("β", "Relative stiffness of bar and concrete", "(K · d / (4 · E_s · I))^0.25", beta, "1/mm", friberg, w.put("dowel_support"), dia, es, derived("I", inertia, "mm⁴", "second moment")),
		working.New("D_1", "Spring of the bar in the concrete", "4 · β³ · E_s · I / (2 + β · z)", bed, "N/mm", nishizawa, derived("β", beta, "1/mm", "relative stiffness"), es, derived("I", inertia, "mm⁴", "second moment"), opening),
		working.New("D_2", "Spring of the bar across the gap, in bending and shear", "12 · E_s · I / (z³ · (1 + 12 · E_s · I / (E_s / (2 · (1 + ν_s)) · 0.9 · π · d² / 4 · z²)))", gap, "N/mm", nishizawa, es, derived("I", inertia, "mm⁴", "second moment"), opening, dia, working.In("ν_s", steelPoisson, "–", "Poisson's ratio of steel")),
		working.New("D", "Spring of one dowel", "1 / (1 / D_1 + 1 / D_2)", one, "N/mm", nishizawa, derived("D_1", bed, "N/mm", "in the concrete"), derived("D_2", gap, "N/mm", "across the gap")),
		working.New("J", "Stiffness of the joint over k l", "D / s_d / (k · l)", ratio, "–", source.Cite("ioannides1985", "Ioannides and Hammons 1996"), derived("D", one, "N/mm", "one dowel"), w.put("dowel_spacing"), w.put("support"), wl),
		working.New("η", "Deflection carried over, for a wheel of radius 0.2 l", "1 / (1 + 10^((0.214 − 0.183 · 0.2 − log10(J)) / 1.18))", lte, "–", source.Cite("ioannides1985", "Ioannides and Hammons 1996"), derived("J", ratio, "–", "stiffness of the joint")),
		working.New("T", "Share of the stress passed on", "η_σ / (1 + η_σ)", w.share, "–", source.Cite("own", "plate solutions of two slabs and a shear spring"), working.In("η_σ", carried, "–", "stress carried over at this deflection, from the table of plate solutions")),
	}
}
