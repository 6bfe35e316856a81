package job

import (
	"fmt"
	"strings"
	"time"
	_ "time/tzdata" // zone names on machines that have none

	"slabwright/causes"
)

// checkHead checks the few fields every job must have.
func (j *Job) checkHead() []Problem {
	var problems []Problem
	need := func(field, value, want, mend string) {
		if strings.TrimSpace(value) == "" {
			problems = append(problems, Problem{Level: Error, Code: "required", Field: field, Found: "nothing is written", Want: want, Mend: mend})
		}
	}
	need("id", j.ID, "a short name of the job", "Give it one, such as yard-3.")
	need("title", j.Title, "a title for the report", "One line that a client would recognise.")
	need("place.name", j.Place.Name, "the place's name", "Town and street will do.")
	switch _, err := time.LoadLocation(j.Place.Zone); {
	case j.Place.Zone == "" || j.Place.Zone == "Local":
		problems = append(problems, Problem{Level: Error, Code: "zone", Field: "place.zone", Found: fmt.Sprintf("zone %q", j.Place.Zone),
			Want: "the IANA name of the site's time zone", Mend: "Such as Europe/Berlin, America/Denver or Australia/Perth."})
	case err != nil:
		p := Problem{Level: Error, Code: "zone", Field: "place.zone", Found: fmt.Sprintf("zone %q is not a time zone name", j.Place.Zone),
			Want: "the IANA name of the site's time zone, such as Europe/Berlin"}
		if near, ok := nearWord(j.Place.Zone, zoneNames()); ok {
			p.Mend = fmt.Sprintf("Did you mean %q?", near)
		}
		problems = append(problems, p)
	}
	if j.Version != Version {
		problems = append(problems, Problem{Level: Error, Code: "version", Field: "version", Found: fmt.Sprintf("version %d", j.Version), Want: fmt.Sprintf("version %d", Version)})
	}
	return problems
}

// index gathers the ids of one kind of thing and reports what is wrong with them.
type index struct {
	what     string
	first    map[string]string
	names    []string
	problems []Problem
}

func newIndex(what string) *index { return &index{what: what, first: map[string]string{}} }

func (x *index) see(field, id string) {
	was, twice := x.first[id]
	switch {
	case id == "":
		x.problems = append(x.problems, Problem{Level: Error, Code: "id-missing", Field: field, Found: x.what + " without an id", Want: "a short name of its own", Mend: "Give it one; others refer to it."})
	case twice:
		x.problems = append(x.problems, Problem{Level: Error, Code: "id-twice", Field: field, Found: fmt.Sprintf("%s id %q, also of %s", x.what, id, was), Want: "an id used once", Mend: "Rename one of the two, and what refers to it."})
	default:
		x.first[id], x.names = field, append(x.names, id)
	}
}

// want reports an id that nothing has. An empty one is not a reference.
func (x *index) want(field, id string) []Problem {
	if id == "" {
		return nil
	}
	if _, ok := x.first[id]; ok {
		return nil
	}
	p := Problem{Level: Error, Code: "id-unknown", Field: field, Found: fmt.Sprintf("no %s has the id %q", x.what, id)}
	if len(x.names) > 0 {
		p.Want = "one of: " + strings.Join(x.names, ", ")
	} else {
		p.Mend = fmt.Sprintf("The job lists no %s yet; add it.", x.what)
	}
	if near, ok := nearWord(id, x.names); ok {
		p.Mend = fmt.Sprintf("Did you mean %q?", near)
	}
	return []Problem{p}
}

// ids gathers every id of the job.
func (j *Job) ids() (slabs, joints, mixes, parties, pours *index, rest []*index) {
	slabs, joints, mixes, parties, pours = newIndex("slab"), newIndex("joint"), newIndex("mix"), newIndex("party"), newIndex("pour")
	trucks, departures, walks := newIndex("truck"), newIndex("departure"), newIndex("walk")
	for i, s := range j.Slabs {
		slabs.see(fmt.Sprintf("slabs[%d].id", i), s.ID)
		for k, jt := range s.Joints {
			joints.see(fmt.Sprintf("slabs[%d].joints[%d].id", i, k), jt.ID)
		}
	}
	for i, m := range j.Mixes {
		mixes.see(fmt.Sprintf("mixes[%d].id", i), m.ID)
	}
	for i, p := range j.Parties {
		parties.see(fmt.Sprintf("parties[%d].id", i), p.ID)
	}
	for i, p := range j.Pours {
		pours.see(fmt.Sprintf("pours[%d].id", i), p.ID)
		for k, t := range p.Trucks {
			trucks.see(fmt.Sprintf("pours[%d].trucks[%d].ticket", i, k), t.Ticket)
		}
		for k, d := range p.Departures {
			departures.see(fmt.Sprintf("pours[%d].departures[%d].id", i, k), d.ID)
		}
	}
	rest = []*index{trucks, departures, walks}
	for i, w := range j.Walks {
		walks.see(fmt.Sprintf("walks[%d].id", i), w.ID)
		findings, unseen := newIndex("finding"), newIndex("could-not-see") // a finding keeps its id from walk to walk
		for k, f := range w.Findings {
			findings.see(fmt.Sprintf("walks[%d].findings[%d].id", i, k), f.ID)
		}
		for k, u := range w.Unseen {
			unseen.see(fmt.Sprintf("walks[%d].could_not_see[%d].id", i, k), u.ID)
		}
		rest = append(rest, findings, unseen)
	}
	return
}

func (j *Job) checkIDs() []Problem {
	slabs, joints, mixes, parties, pours, rest := j.ids()
	var problems []Problem
	for _, x := range append([]*index{slabs, mixes, parties, pours}, rest...) {
		problems = append(problems, x.problems...)
	}
	for _, p := range joints.problems { // within one slab the plan says it
		if len(j.Slabs) > 1 && p.Code == "id-twice" {
			problems = append(problems, p)
		}
	}
	return problems
}

func (j *Job) checkReferences() []Problem {
	_, joints, mixes, parties, _, _ := j.ids()
	var problems []Problem
	add := func(p []Problem) { problems = append(problems, p...) }
	for i, p := range j.Pours {
		at := fmt.Sprintf("pours[%d]", i)
		if p.Mix == "" {
			add([]Problem{{Level: Unknown, Code: "not-known", Field: at + ".mix", Found: "not known: the mix of this pour", Want: "the id of a mix",
				Blocks: []string{"replay of the pour", "cut window"}, Mend: "The delivery ticket names it."}})
		}
		add(mixes.want(at+".mix", p.Mix))
		for k, t := range p.Trucks {
			add(parties.want(fmt.Sprintf("%s.trucks[%d].asked_by", at, k), t.AskedBy))
		}
		for k, c := range p.Saw {
			add(joints.want(fmt.Sprintf("%s.saw[%d].joint", at, k), c.Joint))
		}
		for k, d := range p.Departures {
			field := fmt.Sprintf("%s.departures[%d]", at, k)
			add(parties.want(field+".party", d.Party))
			for b, cause := range d.Bears {
				add(checkCause(fmt.Sprintf("%s.bears_on[%d]", field, b), cause))
			}
		}
	}
	for i, w := range j.Walks {
		for k, f := range w.Findings {
			add(joints.want(fmt.Sprintf("walks[%d].findings[%d].joint", i, k), f.Joint))
		}
		for k, n := range w.None {
			for b, id := range n.Joints {
				add(joints.want(fmt.Sprintf("walks[%d].none_seen[%d].joints[%d]", i, k, b), id))
			}
		}
	}
	return problems
}

func checkCause(field, id string) []Problem {
	if causes.Find(id) != nil {
		return nil
	}
	var ids []string
	for _, c := range causes.Catalogue() {
		ids = append(ids, c.ID)
	}
	return checkWord(Problem{Level: Error, Code: "id-unknown", Field: field, Found: fmt.Sprintf("%q is no cause of the catalogue", id)}, id, ids)
}

// zoneNames is a choice of zone names to guess from, one for most clocks.
func zoneNames() []string {
	return strings.Fields(`Europe/London Europe/Dublin Europe/Lisbon Europe/Madrid Europe/Paris Europe/Brussels Europe/Amsterdam
		Europe/Berlin Europe/Zurich Europe/Vienna Europe/Rome Europe/Prague Europe/Warsaw Europe/Copenhagen Europe/Oslo Europe/Stockholm
		Europe/Helsinki Europe/Athens Europe/Bucharest Europe/Sofia Europe/Istanbul Europe/Kyiv Africa/Cairo Africa/Johannesburg
		Africa/Lagos Africa/Nairobi Asia/Dubai Asia/Riyadh Asia/Kolkata Asia/Singapore Asia/Manila Asia/Jakarta Asia/Shanghai
		Asia/Tokyo Asia/Seoul Australia/Perth Australia/Adelaide Australia/Darwin Australia/Brisbane Australia/Sydney
		Australia/Melbourne Australia/Hobart Pacific/Auckland Pacific/Honolulu America/Anchorage America/Vancouver America/Los_Angeles
		America/Phoenix America/Denver America/Edmonton America/Winnipeg America/Chicago America/Mexico_City America/New_York
		America/Toronto America/Halifax America/St_Johns America/Bogota America/Lima America/Santiago America/Sao_Paulo
		America/Argentina/Buenos_Aires UTC`)
}
