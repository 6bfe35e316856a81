package causes

import (
	"fmt"
	"math"
	"sort"
	"strings"
)

// SlabRanking is the answer for a slab as a whole.
type SlabRanking struct {
	Causes   []SlabCause       `json:"causes"`   // most telling first
	Findings map[string]string `json:"findings"` // finding to its likeliest cause, after the findings were set beside each other
	Links    []string          `json:"links,omitempty"`
	Answer   string            `json:"answer"`
}

// SlabCause is one cause over all findings.
type SlabCause struct {
	Cause    string   `json:"cause"`
	Name     string   `json:"name"`
	Plain    string   `json:"plain"`
	Expected float64  `json:"expected"` // findings it is expected to explain
	AtAll    float64  `json:"at_all"`   // chance that it explains at least one
	About    string   `json:"about"`    // of AtAll
	Leads    []string `json:"leads"`    // findings it leads
}

// How findings of one slab hang together: our own judgement. A further finding has
// the cause of another with chance shared, one that such a cause brings about with
// chance linked, and else a cause of its own.
const (
	shared = 0.30
	linked = 0.10
)

// link is one row of how a cause brings another about.
type link struct{ from, to, because string }

var links = readLinks()

func readLinks() []link {
	var all []link
	for _, r := range readTable("links.csv") {
		if Find(r["from"]) == nil || Find(r["to"]) == nil {
			panic("causes: links.csv names an unknown cause: " + r["from"] + " " + r["to"])
		}
		all = append(all, link{r["from"], r["to"], r["because"]})
	}
	return all
}

// RankSlab lets the findings of one slab explain each other: the same crew, mix
// and night acted on all of them. The chance of a cause at a finding is raised by
// its chances at the others, as they stand on their own evidence, and by those of
// causes that bring it about:
//
//	p_j(c) ∝ P_j(c)·((1-σ-λ) + σ·m_j(c)/π(c) + λ·Σ_a m_j(a)/(n_a·π(c)))
//
// with π(c) the prior chance, m_j(c) the mean chance of c over the other findings, a
// the causes that bring about c and n_a how many each brings about. It is the rule of
// an urn from which finding j draws the cause of another finding with chance σ. What
// is no commoner elsewhere than anywhere (m = π) raises nothing. A cause ruled out at a
// finding stays out there.
//
// groups are findings, by number, that stand for one thing that happened, such as four
// corners broken at one crossing; what the others of a group say of it counts besides,
// weakened by the power once.
func RankSlab(rankings []Ranking, groups ...[]int) SlabRanking {
	s := SlabRanking{Findings: map[string]string{}}
	if len(rankings) == 0 {
		s.Answer = "Nothing was found on this slab."
		return s
	}
	together := Beside(rankings, groups...)
	for j := range rankings {
		s.Findings[rankings[j].Finding] = catalogue[order(together[j])[0]].ID
	}
	s.Causes = slabCauses(rankings, together)
	s.Links = slabLinks(s.Causes)
	s.Answer = slabAnswer(s, rankings)
	return s
}

// Beside returns the chances of every cause, in the order of the catalogue, at each
// finding once the findings are set beside each other (see [RankSlab]).
func Beside(rankings []Ranking, groups ...[]int) [][]float64 {
	alone, together := make([][]float64, len(rankings)), make([][]float64, len(rankings))
	for j, r := range rankings {
		alone[j] = make([]float64, len(catalogue))
		for _, w := range r.All {
			alone[j][position[w.Cause]] = w.P
		}
	}
	grouped := shareInGroups(alone, rankings, groups)
	for j := range rankings {
		together[j] = raised(grouped, rankings[j].prior, j)
	}
	return together
}

// once is the power with which another finding of the same happening counts: our own
// judgement, as the evidence of both hangs together.
const once = 0.4

// shareInGroups lets findings that stand for one happening share their evidence:
//
//	p_j(c) ∝ P_j(c)·Π_i (P_i(c)/π_i(c))^κ over the others of the group
func shareInGroups(alone [][]float64, rankings []Ranking, groups [][]int) [][]float64 {
	out := make([][]float64, len(alone))
	for j := range alone {
		out[j] = append([]float64(nil), alone[j]...)
	}
	for _, g := range groups {
		for _, j := range g {
			sum := 0.0
			for h := range out[j] {
				for _, i := range g {
					if i != j {
						ratio := math.Max(alone[i][h], leastShare) / math.Max(rankings[i].prior[h], leastShare)
						out[j][h] *= math.Pow(ratio, once)
					}
				}
				sum += out[j][h]
			}
			for h := range out[j] {
				out[j][h] /= sum
			}
		}
	}
	return out
}

// leastShare keeps a ratio of chances finite where one of them is nothing.
const leastShare = 1e-4

// raised returns the chances at finding j beside the others.
func raised(alone [][]float64, prior []float64, j int) []float64 {
	p := append([]float64(nil), alone[j]...)
	if len(alone) < 2 {
		return p
	}
	mean := make([]float64, len(catalogue))
	for i, q := range alone {
		if i == j {
			continue
		}
		for h := range q {
			mean[h] += q[h] / float64(len(alone)-1)
		}
	}
	sum := 0.0
	for h, lift := range lifts(mean, prior) {
		p[h] *= lift
		sum += p[h]
	}
	for h := range p {
		p[h] /= sum
	}
	return p
}

// lifts is what the mean chances over the other findings do to each cause.
func lifts(mean, prior []float64) []float64 {
	lift := make([]float64, len(mean))
	for h := range lift {
		lift[h] = 1 - shared - linked + shared*mean[h]/prior[h]
	}
	for _, l := range links {
		from, to := position[l.from], position[l.to]
		lift[to] += linked * mean[from] / (float64(bringsAbout[l.from]) * prior[to])
	}
	for h, m := range mean { // a cause that brings nothing about leaves its share to chance
		if bringsAbout[catalogue[h].ID] == 0 {
			for k := range lift {
				lift[k] += linked * m
			}
		}
	}
	lift[position[Other]] = 1
	return lift
}

// bringsAbout counts the causes that each cause brings about.
var bringsAbout = countLinks()

func countLinks() map[string]int {
	n := map[string]int{}
	for _, l := range links {
		n[l.from]++
	}
	return n
}

func slabCauses(rankings []Ranking, together [][]float64) []SlabCause {
	var all []SlabCause
	for h, c := range catalogue {
		sc := SlabCause{Cause: c.ID, Name: c.Name, Plain: c.Plain}
		none := 1.0
		for j, p := range together {
			sc.Expected += p[h]
			none *= 1 - p[h]
			if order(p)[0] == h {
				sc.Leads = append(sc.Leads, rankings[j].Finding)
			}
		}
		sc.AtAll = 1 - none
		sc.About = About(sc.AtAll)
		all = append(all, sc)
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].Expected > all[j].Expected })
	return all
}

// slabLinks says which causes that lead at some finding bring about others that do.
func slabLinks(all []SlabCause) []string {
	leads := map[string]SlabCause{}
	for _, c := range all {
		if len(c.Leads) > 0 {
			leads[c.Cause] = c
		}
	}
	var text []string
	for _, l := range links {
		from, ok := leads[l.from]
		to, also := leads[l.to]
		if ok && also {
			text = append(text, fmt.Sprintf("%s (%s) may explain %s (%s): %s.", from.Name, strings.Join(from.Leads, ", "), to.Name, strings.Join(to.Leads, ", "), l.because))
		}
	}
	return text
}

func slabAnswer(s SlabRanking, rankings []Ranking) string {
	decided := 0
	for _, r := range rankings {
		if r.Decided {
			decided++
		}
	}
	told := map[string]bool{}
	for _, r := range rankings {
		told[r.Finding] = r.Decided
	}
	var names []string
	for _, c := range s.Causes {
		if len(c.Leads) == 0 {
			continue
		}
		var at []string
		for _, finding := range c.Leads {
			if !told[finding] {
				finding += ", not settled"
			}
			at = append(at, finding)
		}
		names = append(names, fmt.Sprintf("%s (%s)", c.Name, strings.Join(at, "; ")))
	}
	return fmt.Sprintf("Of %d findings %d can be told. In front: %s.", len(rankings), decided, list(names))
}
