package job

import (
	"strings"
	"testing"
	"time"

	"slabwright/report"
	"slabwright/site"
	"slabwright/source"
)

func stateOfPour(t *testing.T, j *Job) report.PourDay {
	t.Helper()
	c := diagnosed(t, j, DemoFS())
	if len(c.Pours) == 0 || c.Pours[0].Window.Opens == nil {
		t.Fatal("no cut window")
	}
	return c.Pours[0]
}

// Weather typed in and weather made from least and greatest drive a pour too, and a
// made day is marked as made.
func TestWeatherWithoutFile(t *testing.T) {
	fact := func(v float64) *source.Fact { return &source.Fact{Value: v, Known: source.Recorded} }
	j := demo(t)
	j.Pours = j.Pours[:1]
	byFile := stateOfPour(t, j)

	made := demo(t)
	made.Pours = made.Pours[:1]
	made.Pours[0].Weather = ""
	made.Pours[0].WeatherDay = &site.WeatherDay{Min: fact(12), Max: fact(27), WindBlown: fact(9)}
	p := stateOfPour(t, made)
	if !strings.Contains(p.Weather, "made") {
		t.Errorf("a made day must be marked: %q", p.Weather)
	}
	if apart := p.Window.Opens.Sub(*byFile.Window.Opens).Abs(); apart > 3*time.Hour {
		t.Errorf("the made day opens the window %s from the record", apart)
	}

	typed := demo(t)
	typed.Pours = typed.Pours[:1]
	typed.Pours[0].Weather = ""
	for h := -12; h <= 60; h++ {
		at := typed.Pours[0].Start.Truncate(time.Hour).Add(time.Duration(h) * time.Hour)
		typed.Pours[0].WeatherHours = append(typed.Pours[0].WeatherHours,
			site.WeatherHour{At: at, Air: *fact(20), Humidity: *fact(0.5), Wind: *fact(3)})
	}
	if p := stateOfPour(t, typed); !strings.Contains(p.Weather, "typed in") {
		t.Errorf("typed weather must say so: %q", p.Weather)
	}
	for _, problem := range typed.Validate(DemoFS()) {
		if strings.Contains(problem.Field, "weather") {
			t.Error(problem)
		}
	}
}
