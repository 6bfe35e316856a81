package climate

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"time"
)

// WriteCSV writes the series as a table that [ReadCSV] reads back the same, digit
// by digit: UTC times, units in the head, what is not known left empty. The origin,
// the wind height and the span of means are not in the table.
func WriteCSV(w io.Writer, s Series) error {
	out := csv.NewWriter(w)
	rows := [][]string{{"time_UTC", "air_C", "humidity_fraction", "wind_m_s", "cloud_fraction", "sun_W_m2", "sky_W_m2", "rain_mm_h"}}
	for i := range s.Hours {
		row := []string{s.Hours[i].Time.UTC().Format(time.RFC3339)}
		for _, q := range quantitiesOfHour {
			cell := ""
			if v := *q.get(&s.Hours[i]); !math.IsNaN(v) {
				cell = strconv.FormatFloat(v, 'g', -1, 64)
			}
			row = append(row, cell)
		}
		rows = append(rows, row)
	}
	return out.WriteAll(rows)
}
