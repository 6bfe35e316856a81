package job

import (
	"fmt"
	"strings"
	"time"
	_ "time/tzdata" // zone names on machines that have none
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
