package causes

import (
	"fmt"
	"math"

	"slabwright/plan"
	"slabwright/source"
	"slabwright/working"
)

// ReplayedLine is something that opened in one member of a sample of replays.
type ReplayedLine struct {
	Joint string       // of a joint; empty for a crack elsewhere
	Path  []plan.Point // what of it has opened
	Hour  float64      // after the first truck, when it first opened
	Ends  [2]float64   // of a joint: the stretch that has opened, metres along its path
}

// Replays are the members of one sample: the same slab with the uncertain facts drawn
// anew in each. Two samples drawn alike can be set beside each other member by member.
type Replays [][]ReplayedLine

// SeenLines is what the walk found, to be set beside replays.
type SeenLines struct {
	Lines   [][]plan.Point // of a crack
	Joint   string         // of a joint found not opened
	JointOf plan.Polyline  // its path
	Until   float64        // hour at which it was first seen; +Inf when nobody knows
}

// What counts as the same crack; our own judgement. A crack wanders between stones and
// weak spots by a few thicknesses, and the triangles of a quick replay are about as
// large.
const (
	placeError  = 0.6  // m, standard deviation of how far a crack lies from where a replay puts it
	widestTurn  = 40.0 // degrees between the two directions from which they are not the same
	stretch     = 0.5  // m, length over which chances are told
	timeFactor  = 1.5  // a replay's hour may be out by this factor
	timeSlack   = 12.0 // and this many hours
	least       = 0.05 // chance of anything at a place that no replay tells of
	pseudo      = 1.0  // members that this is worth
	replayPower = 0.6  // weight of what replays say, as of something assumed
	mostRatio   = 8.0  // most that a replay may change the odds by, either way, before that
)

// Hits returns, member by member, how much of what was seen came in it, 0 to 1: for a
// crack the mean over its stretches of how near a replayed crack of about its direction
// lies, exp(-d²/2σ²); for a joint found shut the share of it that stayed shut. What
// opened well after the first sight does not count.
func (r Replays) Hits(seen SeenLines) []float64 {
	hits := make([]float64, len(r))
	stretches := seen.stretches()
	for m, member := range r {
		if seen.Joint != "" {
			hits[m] = seen.shut(member)
			continue
		}
		for _, s := range stretches {
			hits[m] += nearest(member, s, seen.Until) / float64(len(stretches))
		}
	}
	return hits
}

// place is a point of a line and which way it runs there.
type spot struct{ at, way plan.Point }

func (s SeenLines) stretches() (all []spot) {
	for _, l := range s.Lines {
		line := plan.Polyline(l)
		length := line.Length()
		n := max(1, int(math.Round(length/stretch)))
		for i := range n {
			at, way := line.At((float64(i) + 0.5) / float64(n) * length)
			all = append(all, spot{at, way})
		}
	}
	return all
}

// nearest is how near the nearest replayed crack comes to a spot in place and direction.
func nearest(member []ReplayedLine, s spot, until float64) (best float64) {
	for _, l := range member {
		if l.Joint != "" || len(l.Path) < 2 || l.Hour > timeFactor*until+timeSlack {
			continue
		}
		line := plan.Polyline(l.Path)
		along, _, away := line.Nearest(s.at)
		_, way := line.At(along)
		if math.Abs(way.Dot(s.way)) < math.Cos(widestTurn*math.Pi/180) {
			continue
		}
		best = math.Max(best, math.Exp(-away*away/(2*placeError*placeError)))
	}
	return best
}

// shut is the share of a joint that has not opened in a member.
func (s SeenLines) shut(member []ReplayedLine) float64 {
	length := s.JointOf.Length()
	if length == 0 {
		return 0
	}
	open := 0.0
	for _, l := range member {
		if l.Joint == s.Joint && l.Hour <= timeFactor*s.Until+timeSlack {
			open += math.Abs(l.Ends[1] - l.Ends[0])
		}
	}
	return math.Max(0, 1-open/length)
}

// Score is what replays say of one cause at one finding.
type Score struct {
	Cause     string        `json:"cause"`
	With      float64       `json:"with"`      // chance that it comes here, the slab as it was
	Without   float64       `json:"without"`   // the same without what the cause stands for
	Because   float64       `json:"because"`   // chance that it comes as it was and would not have come without
	Anywhere  float64       `json:"anywhere"`  // chance at a place of the same kind taken at random
	LogRatio  float64       `json:"log_ratio"` // natural logarithm, capped and tempered
	Members   int           `json:"members"`
	Lessening float64       `json:"lessening"` // standard error of With - Without
	Working   working.Sheet `json:"-"`
}

// ScoreCause sets the slab as it was beside the same slab without what a cause stands
// for, member by member, at what was seen. anywhere is the mean chance over places of
// the same kind ([Replays.Anywhere]): the chance that a cause with no say in the place
// would give. The ratio is
//
//	R = (b + ε)/(a + ε),  b = mean over members of max(0, with - without)
//
// kept within 1/8 and 8, and its logarithm times 0.6. Where removing the cause changes
// nothing here, b is nothing and R speaks against it.
func ScoreCause(cause string, with, without Replays, seen SeenLines, anywhere float64) Score {
	a, b := with.Hits(seen), without.Hits(seen)
	s := Score{Cause: cause, Anywhere: anywhere, Members: min(len(a), len(b))}
	var apart []float64
	for m := range s.Members {
		s.With += a[m]
		s.Without += b[m]
		s.Because += math.Max(0, a[m]-b[m])
		apart = append(apart, a[m]-b[m])
	}
	s.settle(apart)
	return s
}

// ScorePlain is [ScoreCause] for what needs no trigger: the chance that it comes here
// even where everything was done well.
func ScorePlain(cause string, well Replays, seen SeenLines, anywhere float64) Score {
	hits := well.Hits(seen)
	s := Score{Cause: cause, Anywhere: anywhere, Members: len(hits)}
	for _, h := range hits {
		s.With += h
		s.Without += h
		s.Because += h
	}
	s.settle(hits)
	return s
}

// settle turns sums into chances and the ratio.
func (s *Score) settle(apart []float64) {
	n := float64(s.Members)
	if n == 0 {
		return
	}
	s.Because = (s.Because + pseudo*least) / (n + pseudo)
	s.With, s.Without = s.With/n, s.Without/n
	mean, square := 0.0, 0.0
	for _, x := range apart {
		mean += x / n
		square += x * x / n
	}
	s.Lessening = math.Sqrt(math.Max(0, square-mean*mean) / n)
	ratio := (s.Because + least) / (s.Anywhere + least)
	s.LogRatio = replayPower * math.Log(math.Min(mostRatio, math.Max(1/mostRatio, ratio)))
	s.Working = s.sheet(ratio)
}

func (s Score) sheet(ratio float64) working.Sheet {
	own := source.Cite("own", "replays set beside each other")
	w := working.Sheet{ID: "replay-" + s.Cause, Title: "What the replays say of " + nameOf(s.Cause), Basis: []string{
		fmt.Sprintf("%d replays of the slab as it was, and the same without what the cause stands for; drawn alike, so that each can be set beside its like.", s.Members),
		fmt.Sprintf("A replayed crack counts as the one seen by exp(-d²/2σ²) with σ = %.1f m, if it runs within %.0f° of it and not well after it was first seen.", placeError, widestTurn),
		fmt.Sprintf("A share of %.2f is added on both sides of the ratio for what no replay tells of; the ratio is kept within 1/%.0f and %.0f.", least, mostRatio, mostRatio)}}
	ratio = math.Min(mostRatio, math.Max(1/mostRatio, ratio))
	w.Add(working.New("p_1", "share of the replays with it here, the slab as it was", "", s.With, "", own),
		working.New("p_0", "the same without what the cause stands for", "", s.Without, "", own),
		working.New("b", "share with it here as it was and not without", "", s.Because, "", own),
		working.New("a", "share at places of the same kind taken at random", "", s.Anywhere, "", own),
		working.New("l", "what is added to the logarithm of the likelihood", "g·ln(R)", s.LogRatio, "", own,
			working.In("g", replayPower, "", "weight of a replay"), working.In("R", ratio, "", "(b + 0.05)/(a + 0.05)")))
	return w
}

func nameOf(cause string) string {
	if c := Find(cause); c != nil {
		return c.Name
	}
	return cause
}

// Anywhere is the mean chance over places of the same kind: the same line moved to the
// middle of each panel given, or for a joint the other joints.
func (r Replays) Anywhere(seen SeenLines, moved []SeenLines) float64 {
	if len(r) == 0 || len(moved) == 0 {
		return 0
	}
	sum := 0.0
	for _, m := range moved {
		m.Until = seen.Until
		for _, h := range r.Hits(m) {
			sum += h / float64(len(r)*len(moved))
		}
	}
	return sum
}

// PhysicsOf turns the scores of one finding into evidence. A cause that replays cannot
// speak of keeps the chance it has.
func PhysicsOf(scores []Score, says func(Score) string) Physics {
	p := Physics{Text: "what replays of the slab say of this place", LogLikelihood: map[string]float64{}, Says: map[string]string{}, Workings: map[string]string{}}
	for _, s := range scores {
		p.LogLikelihood[s.Cause] = s.LogRatio
		p.Says[s.Cause] = says(s)
		p.Workings[s.Cause] = s.Working.ID
	}
	return p
}
