package checks

import (
	"context"
	"fmt"
	"math"

	"slabwright/flexure"
	"slabwright/source"
	"slabwright/working"
)

// Row is one check: what is asked, what there is, and the sheet that says so.
type Row struct {
	ID          string          `json:"id"`    // short and stable: "bending-L1-corner"
	Group       string          `json:"group"` // of [Groups]
	Check       string          `json:"check"` // "Forklift, corner: bending under the load"
	Load        string          `json:"load,omitempty"`
	Place       Place           `json:"place,omitempty"`
	Demand      float64         `json:"demand"`
	Capacity    float64         `json:"capacity"`
	Unit        string          `json:"unit"`
	Utilisation float64         `json:"utilisation"` // demand over capacity: met up to 1
	Pass        bool            `json:"pass"`
	Clause      source.Citation `json:"clause"`
	Sheet       string          `json:"sheet"` // ID of the working
	Beside      *working.Check  `json:"beside,omitempty"`
	Note        string          `json:"note,omitempty"` // what to mind, or to do when it is not met
}

// Groups of checks, in the order they are printed.
const (
	Thickness = "thickness"
	Fatigue   = "fatigue"
	Punching  = "punching"
	Joints    = "joints"
	Reinforce = "steel"
	Subgrade  = "ground"
	Surface   = "surface"
)

// Groups lists every group in the order of the rows.
var Groups = []string{Thickness, Fatigue, Punching, Joints, Reinforce, Subgrade, Surface}

// LeftOut is a check that could not be made, and what it lacks.
type LeftOut struct {
	Check string `json:"check"`
	Why   string `json:"why"`
}

// Result is every check of one slab.
type Result struct {
	Code    string          `json:"code"`
	Rows    []Row           `json:"rows"`
	Sheets  []working.Sheet `json:"sheets"`
	LeftOut []LeftOut       `json:"left_out,omitempty"`
}

// Pass reports whether every check is met.
func (r Result) Pass() bool { return r.Worst() == nil || r.Worst().Pass }

// Worst returns the row with the greatest utilisation, or nil.
func (r Result) Worst() *Row {
	var worst *Row
	for i := range r.Rows {
		if worst == nil || r.Rows[i].Utilisation > worst.Utilisation {
			worst = &r.Rows[i]
		}
	}
	return worst
}

// Find returns the row with this ID, or nil.
func (r Result) Find(id string) *Row {
	for i := range r.Rows {
		if r.Rows[i].ID == id {
			return &r.Rows[i]
		}
	}
	return nil
}

// Run makes every check that the input has the facts for. Bad input comes back as
// [Problems], all at once; the only other error is that of the context.
func Run(ctx context.Context, in Input) (Result, error) {
	if bad := in.Check(); len(bad) > 0 {
		return Result{}, bad
	}
	w := newWorker(in)
	for _, step := range []func(){w.section, w.joints, w.loads, w.fatigue, w.steel, w.ground, w.surface} {
		if err := ctx.Err(); err != nil {
			return Result{}, err
		}
		step()
	}
	if !in.Quick {
		if err := w.plates(ctx); err != nil {
			return Result{}, err
		}
	}
	w.res.order()
	return w.res, nil
}

// order puts the rows in the order of [Groups], as made within each.
func (r *Result) order() {
	var rows []Row
	for _, g := range Groups {
		for _, row := range r.Rows {
			if row.Group == g {
				rows = append(rows, row)
			}
		}
	}
	r.Rows = rows
}

// worker carries one run: the numbers in N, mm and MPa.
type worker struct {
	in        Input
	numbers   map[string]given
	res       Result
	h, fc     float64
	e, nu     float64
	k, l      float64
	flexural  float64            // strength in bending of the code, MPa
	share     float64            // of a load passed on at the joint
	opening   float64            // of the joint, mm
	stresses  map[string]float64 // of each load and place in service, MPa
	effLTE    float64            // deflection carried over by dowels; 0 when not known
	modulusIn working.Input
	curled    map[string]*contact // of each row of load and curl together
}

func newWorker(in Input) *worker {
	w := &worker{in: in, numbers: map[string]given{}, stresses: map[string]float64{}, curled: map[string]*contact{}}
	for _, g := range w.in.givens() {
		w.numbers[g.Key] = g
	}
	w.res.Code = in.Code.Title
	w.h, w.fc, w.nu, w.k = w.val("thickness"), w.val("strength"), w.val("poisson"), w.val("support")
	return w
}

// val is a number of the input in the unit it is worked in; it must be known.
func (w *worker) val(key string) float64 { return w.must(key).printed() }

// put is a number of the input as it goes into a line.
func (w *worker) put(key string) working.Input { return w.must(key).input() }

func (w *worker) has(key string) bool { _, ok := w.numbers[key]; return ok }

func (w *worker) must(key string) given {
	g, ok := w.numbers[key]
	if !ok {
		panic("checks: " + key + " is asked for and not known")
	}
	return g
}

// of adds the key of a load to a key.
func of(l *Load, key string) string { return l.ID + "." + key }

// derived is a result of an earlier line as input of a later one.
func derived(symbol string, value float64, unit, what string) working.Input {
	i := working.In(symbol, value, unit, what)
	i.Known = "worked out"
	return i
}

func (w *worker) lIn() working.Input {
	return derived("l", w.l, "mm", "radius of relative stiffness")
}
func (w *worker) flexuralIn() working.Input {
	return derived("f_fl", w.flexural, "MPa", "flexural strength")
}

// section works out what every other sheet starts from: modulus, flexural strength,
// radius of relative stiffness.
func (w *worker) section() {
	s := working.Sheet{ID: "section", Title: "The slab and its concrete", Basis: []string{w.in.Code.Title + ".", "Strengths at 28 days."}}
	fc := w.put("strength")
	if w.has("modulus") {
		w.e, w.modulusIn = w.val("modulus"), w.put("modulus")
	} else {
		m := w.in.Code.laws.modulus(w.fc)
		w.e = m.value
		w.modulusIn = derived("E", w.e, "MPa", "modulus of elasticity")
		s.Add(working.New("E", "Modulus of elasticity", m.formula, m.value, "MPa", m.cite, append([]working.Input{fc}, m.inputs...)...))
	}
	f := w.in.Code.laws.flexural(w.fc, w.h)
	w.flexural = f.value
	s.Add(working.New("f_fl", "Flexural tensile strength", f.formula, f.value, "MPa", f.cite, append([]working.Input{fc, w.put("thickness")}, f.inputs...)...))
	w.l = flexure.RelativeStiffness(w.e, w.h, w.nu, w.k)
	s.Add(working.New("l", "Radius of relative stiffness", "(E · h³ / (12 · (1 − ν²) · k))^0.25", w.l, "mm", source.Cite("westergaard1926", ""),
		w.modulusIn, w.put("thickness"), w.put("poisson"), w.put("support")))
	w.res.Sheets = append(w.res.Sheets, s)
}

// row adds a check with its sheet; the last line of the sheet becomes utilisation.
func (w *worker) row(r Row, s working.Sheet, lines ...working.Line) {
	r.Utilisation = r.Demand / r.Capacity
	r.Pass = r.Utilisation <= 1
	r.Sheet = s.ID
	s.Add(lines...)
	last := working.New("u", "Used of what there is", "D / R", r.Utilisation, "–", source.Cite("mechanics", ""),
		derived("D", r.Demand, r.Unit, "asked"), derived("R", r.Capacity, r.Unit, "there is"))
	last.Verdict = "pass"
	if !r.Pass {
		last.Verdict = "fail"
	}
	s.Add(last)
	for i := range s.Lines {
		if s.Lines[i].Check != nil && r.Beside == nil {
			r.Beside = s.Lines[i].Check
		}
	}
	w.res.Rows = append(w.res.Rows, r)
	w.res.Sheets = append(w.res.Sheets, s)
}

func (w *worker) leaveOut(check, why string) {
	w.res.LeftOut = append(w.res.LeftOut, LeftOut{check, why})
}

// interpolate returns the value at x between rising xs; x within them.
func interpolate(xs, ys []float64, x float64) float64 {
	for i := 1; i < len(xs); i++ {
		if x <= xs[i] {
			return ys[i-1] + (ys[i]-ys[i-1])*(x-xs[i-1])/(xs[i]-xs[i-1])
		}
	}
	return ys[len(ys)-1]
}

func sq(x float64) float64 { return x * x }

func name(l *Load, p Place) string {
	words := map[Place]string{Interior: "interior", AtJoint: "at a joint", FreeEdge: "at a free edge", Corner: "at a corner"}
	return fmt.Sprintf("%s, %s", l.title(), words[p])
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
