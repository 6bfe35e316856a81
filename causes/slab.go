package causes

import (
	"fmt"
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

// shared is how strongly a cause found elsewhere on the slab raises it here, and
// linked the same for a cause that brings another about: our own judgement.
const (
	shared = 1.0
	linked = 0.5
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
//	p_j(c) ∝ P_j(c)·(1 + m_j(c) + m_j(a)/2 …)
//
// with m_j(c) the mean chance of c over the other findings and a the causes that
// lead to c. A cause ruled out at a finding stays out there.
func RankSlab(rankings []Ranking) SlabRanking {
	s := SlabRanking{Findings: map[string]string{}}
	if len(rankings) == 0 {
		s.Answer = "Nothing was found on this slab."
		return s
	}
	alone := make([][]float64, len(rankings))
	for j, r := range rankings {
		alone[j] = make([]float64, len(catalogue))
		for _, w := range r.All {
			alone[j][position[w.Cause]] = w.P
		}
	}
	together := make([][]float64, len(rankings))
	for j := range rankings {
		together[j] = raised(alone, j)
		s.Findings[rankings[j].Finding] = catalogue[order(together[j])[0]].ID
	}
	s.Causes = slabCauses(rankings, together)
	s.Links = slabLinks(s.Causes)
	s.Answer = slabAnswer(s, rankings)
	return s
}

// raised returns the chances at finding j beside the others.
func raised(alone [][]float64, j int) []float64 {
	mean := make([]float64, len(catalogue))
	for i, p := range alone {
		if i == j {
			continue
		}
		for h := range p {
			mean[h] += p[h] / float64(len(alone)-1)
		}
	}
	p, sum := make([]float64, len(catalogue)), 0.0
	for h, c := range catalogue {
		lift := 1 + shared*mean[h]
		if c.ID == Other {
			lift = 1
		}
		for _, l := range links {
			if l.to == c.ID {
				lift += linked * mean[position[l.from]]
			}
		}
		p[h] = alone[j][h] * lift
		sum += p[h]
	}
	for h := range p {
		p[h] /= sum
	}
	return p
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
