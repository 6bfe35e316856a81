package job

import "fmt"

func stage(name string, done, begun bool, text string) Step {
	state := "open"
	if done {
		state = "done"
	} else if begun {
		state = "begun"
	}
	return Step{Name: name, State: state, Text: text}
}

func (j *Job) stepSlab() Step {
	drawn, thick := 0, 0
	for _, s := range j.Slabs {
		if len(s.Outline) >= 3 {
			drawn++
		}
		if s.Thickness != nil {
			thick++
		}
	}
	n := len(j.Slabs)
	return stage("slab drawn", n > 0 && drawn == n && thick == n, drawn > 0, fmt.Sprintf("%s, %d with its thickness", many(drawn, "outline"), thick))
}

func (j *Job) stepJoints() Step {
	joints, fixtures, panels := 0, 0, 0
	for _, s := range j.Slabs {
		joints, fixtures = joints+len(s.Joints), fixtures+len(s.Fixtures)
		if p, err := s.Panels(); err == nil {
			panels += len(p)
		}
	}
	return stage("joints and fixtures", joints > 0, fixtures > 0, fmt.Sprintf("%s, %s, %s", many(joints, "joint"), many(fixtures, "fixture"), many(panels, "panel")))
}

func (j *Job) stepPours() Step {
	started, sawn, trucks := 0, 0, 0
	for _, p := range j.Pours {
		if p.Start != nil {
			started++
		}
		sawn, trucks = sawn+len(p.Saw), trucks+len(p.Trucks)
	}
	n := len(j.Pours)
	return stage("pours", n > 0 && started == n, n > 0, fmt.Sprintf("%s, %d with their start, %s, %s", many(n, "pour"), started, many(trucks, "truck"), many(sawn, "cut")))
}

func (j *Job) stepWeather() Step {
	with := 0
	for _, p := range j.Pours {
		if p.Weather != "" {
			with++
		}
	}
	return stage("weather", with > 0 && with == len(j.Pours), with > 0, fmt.Sprintf("%d of %s with a record", with, many(len(j.Pours), "pour")))
}

func (j *Job) stepWalks() Step {
	unseen := 0
	for _, w := range j.Walks {
		unseen += len(w.Unseen)
	}
	return stage("walks", len(j.Walks) > 0, false, fmt.Sprintf("%s, %s that could not be seen", many(len(j.Walks), "walk"), many(unseen, "place")))
}

func (j *Job) stepFindings() Step {
	findings, placed, dated := 0, 0, 0
	for _, w := range j.Walks {
		for _, f := range w.Findings {
			findings++
			if len(f.Lines) > 0 || len(f.Area) > 0 || f.Joint != "" {
				placed++
			}
			if f.FirstSeen != nil {
				dated++
			}
		}
	}
	return stage("findings", findings > 0 && placed == findings, findings > 0, fmt.Sprintf("%s, %d on the plan, %d with the day first seen", many(findings, "finding"), placed, dated))
}

func (j *Job) stepCauses(s StatusReport) Step {
	findings := 0
	for _, w := range j.Walks {
		findings += len(w.Findings)
	}
	switch {
	case len(s.Errors) > 0:
		return stage("causes", false, false, "not yet: "+many(len(s.Errors), "error")+" to mend first")
	case findings == 0:
		return stage("causes", false, false, "no finding to explain yet")
	case len(s.Blocked) > 0:
		return stage("causes", false, true, fmt.Sprintf("possible now; %s would be surer or complete with more facts", many(len(s.Blocked), "answer")))
	}
	return stage("causes", true, true, "possible now")
}

func many(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
