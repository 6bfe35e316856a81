package restraint

import (
	"fmt"

	"slabwright/source"
	"slabwright/working"
)

// JointInput is what [JointWorking] needs.
type JointInput struct {
	ID           string  // of the sheet
	Title        string  // such as "Joint J2"
	Base         float64 // share of movement the base lets through: 0.65 stabilised, 0.80 granular, 1 free
	Spacing      float64 // of joints as drawn, m
	Working      float64 // spacing of those that have opened, m; Spacing when all have
	Expansion    float64 // coefficient, 1/K
	Cooling      float64 // fall of mean temperature since the joint formed, K
	Shrinkage    float64 // of the panels, positive, –
	Beyond       float64 // shortening of the panel across the joint since the dowels were held, –
	Here         float64 // shortening of the panel on this side in the same time, –
	FromFixed    float64 // along the joint from where both stand still to the dowel, m
	SideRoom     float64 // that the dowel has sideways, m; 0 for a round bar cast in
	OpeningLimit float64 // at which the transfer in use is lost, m; 0 leaves it out
	Known        map[string]string
}

// Check returns what is wrong with the input; nil when it can be worked.
func (in JointInput) Check() []error {
	var bad []error
	need := func(name string, v, low, high float64, unit string) {
		if !(v >= low && v <= high) {
			bad = append(bad, fmt.Errorf("%s is %g %s; %g to %g %s can be worked", name, v, unit, low, high, unit))
		}
	}
	need("share let through by the base", in.Base, 0.1, 1, "")
	need("spacing of joints", in.Spacing, 0.3, 1000, "m")
	need("spacing of open joints", in.Working, in.Spacing, 1000, "m")
	need("coefficient of expansion", in.Expansion, 1e-6, 3e-5, "1/K")
	need("cooling", in.Cooling, -100, 100, "K")
	need("shrinkage", in.Shrinkage, -0.002, 0.01, "")
	need("shortening here", in.Here, -0.01, 0.01, "")
	need("shortening beyond", in.Beyond, -0.01, 0.01, "")
	need("distance from the fixed point", in.FromFixed, 0, 1000, "m")
	need("side room", in.SideRoom, 0, 0.1, "m")
	need("limit of opening", in.OpeningLimit, 0, 0.1, "m")
	return bad
}

// JointWorking returns how far a joint opens and how far its dowels must slide
// sideways, line by line. The input must pass [JointInput.Check]; it panics
// otherwise.
func JointWorking(in JointInput) working.Sheet {
	if bad := in.Check(); len(bad) > 0 {
		panic("restraint: JointWorking of an unchecked input: " + bad[0].Error())
	}
	put := func(symbol string, v float64, unit, what string) working.Input {
		i := working.In(symbol, v, unit, what)
		i.Known = in.Known[symbol]
		return i
	}
	aashto, statics := source.Cite("aashto1993", "joint opening"), source.Cite("mechanics", "geometry")
	base, alpha := put("C", in.Base, "–", "share let through by the base"), put("α", in.Expansion, "1/K", "expansion")
	cooling, shrinkage := put("ΔT", in.Cooling, "K", "cooling since the joint formed"), put("ε", in.Shrinkage*1e6, "µε", "shrinkage")
	opening := JointOpening(in.Base, in.Spacing, in.Expansion, in.Cooling, in.Shrinkage)
	dominant := JointOpening(in.Base, in.Working, in.Expansion, in.Cooling, in.Shrinkage)
	free := JointOpening(1, in.Spacing, in.Expansion, in.Cooling, in.Shrinkage)
	s := working.Sheet{ID: in.ID, Title: in.Title, Basis: []string{
		"Panels on both sides shorten towards their middles; the opening is a mean over joints that work."}}
	s.Add(
		working.New("ΔL", "Opening when every joint works", "1000 · C · L · (α · ΔT + ε / 10⁶)", opening*1e3, "mm", aashto,
			base, put("L", in.Spacing, "m", "spacing of joints"), alpha, cooling, shrinkage).
			Beside("nothing held by the base", free*1e3, statics, "The base holds back a share of the movement."),
		working.New("ΔL_w", "Opening of those that work, when the others stay shut", "1000 · C · L_w · (α · ΔT + ε / 10⁶)", dominant*1e3, "mm", aashto,
			base, put("L_w", in.Working, "m", "spacing of open joints"), alpha, cooling, shrinkage))
	if in.OpeningLimit > 0 {
		l := working.New("u", "Opening over the limit of the transfer in use", "ΔL_w / w_lim", dominant/in.OpeningLimit, "–", statics,
			working.In("ΔL_w", dominant*1e3, "mm", "opening"), put("w_lim", in.OpeningLimit*1e3, "mm", "limit"))
		l.Verdict = verdict(l.Value)
		s.Add(l)
	}
	demand := LateralDemand(in.Here, in.Beyond, in.FromFixed)
	side := working.New("s", "Sideways movement the dowel must allow", "|ε_a − ε_b| · x / 1000", demand*1e3, "mm", statics,
		put("ε_a", in.Here*1e6, "µε", "shortening on this side"), put("ε_b", in.Beyond*1e6, "µε", "shortening beyond"), put("x", in.FromFixed, "m", "from where both stand still"))
	room := working.New("s_r", "Sideways movement less the room the dowel has", "s − r", (demand-in.SideRoom)*1e3, "mm", statics,
		working.In("s", demand*1e3, "mm", "must allow"), put("r", in.SideRoom*1e3, "mm", "side room"))
	room.Verdict = "pass"
	if demand > in.SideRoom {
		room.Verdict = "fail"
	}
	s.Add(side, room)
	return s
}
