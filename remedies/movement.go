package remedies

import (
	"fmt"
	"math"

	"slabwright/source"
	"slabwright/working"
)

// Opening returns how much wider a crack or joint can still become: what its feed
// length has left to shrink, and what it still shortens down to the coldest
// temperature.
//
//	w = L·(ε + α·(T − Tc))
//
//	feedLength     length of slab that moves into it                [m]
//	shrinkageLeft  shrinkage still to come, above zero              [–]
//	expansion      coefficient of thermal expansion                 [1/K]
//	now, coldest   concrete temperature now and the lowest expected [°C]
//
// Base friction is left out, so this is an upper bound for one joint; a
// neighbour that stays shut hands its share over, which the feed length must
// then count. Statics.
func Opening(feedLength, shrinkageLeft, expansion, now, coldest float64) float64 {
	return feedLength * (shrinkageLeft + expansion*math.Max(0, now-coldest))
}

// Closing returns how much narrower it can become on the hottest day, with no
// shrinkage counted as done: w = L·α·(Th − T). Arguments as for [Opening].
func Closing(feedLength, expansion, now, hottest float64) float64 {
	return feedLength * expansion * math.Max(0, hottest-now)
}

// FillerStrain returns the share by which a filler of this width is stretched by
// an opening.
func FillerStrain(opening, width float64) float64 { return opening / width }

// usualExpansion is used where nobody knows the aggregate: EN 1992-1-1 3.1.3(5).
const usualExpansion = 10e-6 // 1/K

// ToCome is the movement still to come at a finding.
type ToCome struct {
	Opening float64       `json:"opening_m"`
	Closing float64       `json:"closing_m"`
	Strain  *float64      `json:"filler_strain,omitempty"` // of a filler placed now
	Text    string        `json:"text"`
	Working working.Sheet `json:"working"`
}

// MovementToCome returns the movement still to come, or nil with the list of what
// is missing.
func MovementToCome(in Situation) (*ToCome, []string) {
	var missing []string
	need := func(x *float64, what string) float64 {
		if x == nil {
			missing = append(missing, what)
			return 0
		}
		return *x
	}
	feed, left := need(in.FeedLength, "the length of slab that feeds it"), need(in.ShrinkageLeft, "the shrinkage still to come")
	now, coldest, hottest := need(in.Now, "the concrete temperature now"), need(in.Coldest, "the coldest temperature"), need(in.Hottest, "the hottest temperature")
	if len(missing) > 0 {
		return nil, missing
	}
	alpha := usualExpansion
	if in.Expansion != nil {
		alpha = *in.Expansion
	}
	m := &ToCome{Opening: Opening(feed, left, alpha, now, coldest), Closing: Closing(feed, alpha, now, hottest)}
	statics := source.Cite("mechanics", "free shortening of a length")
	m.Working = working.Sheet{ID: "movement-" + in.Finding, Title: "Movement still to come at " + in.Finding, Basis: []string{
		"Base friction left out: an upper bound."}}
	inputs := []working.Input{working.In("L", feed, "m", "feed length"), working.In("ε", left, "", "shrinkage still to come"),
		working.In("α", alpha, "1/K", "thermal expansion"), working.In("T", now, "°C", "concrete now")}
	m.Working.Add(
		working.New("w", "can open by", "L·(ε + α·(T − Tc))", m.Opening, "m", statics, append(inputs, working.In("Tc", coldest, "°C", "coldest"))...),
		working.New("wc", "can close by", "L·α·(Th − T)", m.Closing, "m", statics, append(inputs, working.In("Th", hottest, "°C", "hottest"))...))
	m.Text = fmt.Sprintf("It can still open by %s mm and close by %s mm.", millimetres(m.Opening), millimetres(m.Closing))
	if in.Width != nil && *in.Width > 0 {
		s := FillerStrain(m.Opening, *in.Width)
		m.Strain = &s
		m.Working.Add(working.New("s", "stretch of a filler placed now", "w/b", s, "", statics, working.In("w", m.Opening, "m", "can open by"), working.In("b", *in.Width, "m", "width filled")))
	}
	return m, nil
}

func millimetres(metres float64) string { return working.Figure(1000*metres, 2) }

// Earliest returns the first day from now on which a filler of the given width
// would be stretched by no more than its share, from the shrinkage left over
// time. Between two days of the list the shrinkage left runs straight. It is
// false when the list never gets there.
func Earliest(left []LeftAt, feedLength, thermal, width, share float64) (days float64, ok bool) {
	allowed := (share*width - thermal) / feedLength // strain
	for i, p := range left {
		if p.Strain > allowed {
			continue
		}
		if i == 0 {
			return p.Days, true
		}
		before := left[i-1]
		return before.Days + (p.Days-before.Days)*(before.Strain-allowed)/(before.Strain-p.Strain), true
	}
	return 0, false
}
