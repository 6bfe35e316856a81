package job

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"
	"time"

	"slabwright/climate"
	"slabwright/site"
	"slabwright/unit"
)

// Folders of a job.
const (
	WeatherDir = "weather"
	PhotosDir  = "photos"
	PapersDir  = "papers"
)

// longestGap is how long a stretch without weather may be before the drying and
// heat of a pour day are no longer told by its neighbours. Our own choice.
const longestGap = 3 * time.Hour

// afterPour is how long the weather is wanted from the start of a pour: the days
// in which the saw and early cooling decide.
const afterPour = 72 * time.Hour

// checkFiles checks that weather and photos stay in the job's folder, are there,
// and that the weather covers the pour.
func (j *Job) checkFiles(files []fs.FS) []Problem {
	var problems []Problem
	told := map[string]bool{} // weather files whose doubts were named
	for i, p := range j.Pours {
		field := fmt.Sprintf("pours[%d].weather", i)
		if p.Weather == "" {
			continue
		}
		if bad, ok := escapes(field, p.Weather); ok {
			problems = append(problems, bad)
			continue
		}
		if len(files) > 0 {
			problems = append(problems, j.checkWeather(files[0], field, p, told)...)
		}
	}
	for i, w := range j.Walks {
		for k, f := range w.Findings {
			for n, photo := range f.Photos {
				field := fmt.Sprintf("walks[%d].findings[%d].photos[%d]", i, k, n)
				if bad, ok := escapes(field, photo); ok {
					problems = append(problems, bad)
				} else if len(files) > 0 && !there(files[0], path.Join(PhotosDir, photo)) {
					problems = append(problems, Problem{Level: Warning, Code: "photo-missing", Field: field, Found: fmt.Sprintf("there is no %s in photos/", photo),
						Want: "the file", Mend: "Copy it there, or take its name out."})
				}
			}
		}
	}
	return problems
}

// escapes reports a file name that leaves its folder or means different files on
// different systems.
func escapes(field, name string) (Problem, bool) {
	p := Problem{Level: Error, Code: "path", Field: field, Found: fmt.Sprintf("file name %q", name), Want: "a file in the job's own folder"}
	slashed := strings.ReplaceAll(name, `\`, "/")
	switch {
	case !fs.ValidPath(path.Clean(slashed)) || strings.Contains("/"+slashed+"/", "/../"):
		p.Mend = "Copy the file into the job's folder and write its name only: " + path.Base(slashed)
	case strings.Contains(name, `\`):
		p.Mend = "Write / for \\: " + slashed
	case strings.Contains(name, ":") || strings.ContainsRune(name, 0):
		p.Mend = "Take the colon out of the name."
	default:
		return Problem{}, false
	}
	return p, true
}

func there(files fs.FS, name string) bool {
	info, err := fs.Stat(files, name)
	return err == nil && info.Mode().IsRegular()
}

func (j *Job) checkWeather(files fs.FS, field string, p site.Pour, told map[string]bool) []Problem {
	series, err := j.weatherRecord(files, p)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return []Problem{{Level: Error, Code: "weather-missing", Field: field, Found: fmt.Sprintf("there is no %s in weather/", p.Weather), Want: "an hourly record", Mend: "Copy the file there."}}
	case err != nil:
		return []Problem{{Level: Error, Code: "weather-read", Field: field, Found: fmt.Sprintf("%s was not read: %v", p.Weather, err), Want: "an hourly record as CSV or EPW"}}
	}
	var problems []Problem
	for _, d := range series.Doubtful() {
		if told[p.Weather] {
			break // the same file of an earlier pour
		}
		level := Warning
		if d.Impossible {
			level = Error
		}
		problems = append(problems, Problem{Level: level, Code: "weather-doubt", Field: field, Found: fmt.Sprintf("%s, %s: %s", p.Weather, unit.ClockTime(d.At, time.UTC)+" UTC", strings.TrimSuffix(d.Text, ".")), Mend: d.Mend})
	}
	told[p.Weather] = true
	if p.Start == nil {
		return problems
	}
	for _, g := range series.Gaps(*p.Start, p.Start.Add(afterPour), longestGap) {
		level := Warning
		if g.From.Before(p.Start.Add(24*time.Hour)) && g.To.After(*p.Start) {
			level = Error
		}
		problems = append(problems, Problem{Level: level, Code: "weather-gap", Field: field, Found: fmt.Sprintf("%s over pour %s: %s", p.Weather, p.ID, g),
			Want: fmt.Sprintf("a record from the start of the pour for %g h, no gap over %g h", afterPour.Hours(), longestGap.Hours()), Mend: "Fill the gap from another station, and say so in the file."})
	}
	return problems
}

// weatherRecord reads the weather of a pour as it stands in the job's folder.
func (j *Job) weatherRecord(files fs.FS, p site.Pour) (climate.Series, error) {
	data, err := fs.ReadFile(files, path.Join(WeatherDir, p.Weather))
	if err != nil {
		return climate.Series{}, err
	}
	if strings.EqualFold(path.Ext(p.Weather), ".epw") {
		year := 0
		if p.Start != nil {
			year = p.Start.Year()
		}
		return climate.ReadEPW(bytes.NewReader(data), p.Weather, year)
	}
	zone, err := time.LoadLocation(j.Place.Zone)
	if err != nil {
		zone = nil // each time must carry its offset then
	}
	lines := bytes.Split(data, []byte("\n"))
	for i := 0; i < len(lines) && bytes.HasPrefix(bytes.TrimSpace(lines[i]), []byte("#")); i++ {
		lines[i] = nil // where the record comes from; the line numbers stay
	}
	return climate.ReadCSV(bytes.NewReader(bytes.Join(lines, []byte("\n"))), climate.Table{Zone: zone, Source: climate.Origin{Name: p.Weather}})
}
