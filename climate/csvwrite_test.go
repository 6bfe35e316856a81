package climate

import (
	"bytes"
	"encoding/json"
	"testing"
	"time"
)

// A record written comes back digit by digit.
func TestWriteCSVComesBack(t *testing.T) {
	for _, path := range []string{"testdata/weather/tucson-three-days.epw", "testdata/weather/miami-three-days.tmy3.csv"} {
		s := readStation(t, path, 2026)
		var table bytes.Buffer
		if err := WriteCSV(&table, s); err != nil {
			t.Fatal(err)
		}
		back, err := ReadCSV(&table, Table{MeanOver: time.Hour, Source: s.Source})
		if err != nil {
			t.Fatal(err)
		}
		want, _ := json.Marshal(s.Hours)
		if got, _ := json.Marshal(back.Hours); string(got) != string(want) {
			t.Errorf("%s: written and read back differs", path)
		}
	}
}
