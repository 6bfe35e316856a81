package climate

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// sheet is a table cut into cells.
type sheet struct {
	rows  [][]string
	lines []int // line of each row in the file
	comma rune
}

// cut finds the delimiter and cuts the text into rows of cells.
func cut(text string, bad *ReadErrors) (sheet, bool) {
	t := sheet{comma: delimiter(text)}
	c := csv.NewReader(strings.NewReader(text))
	c.Comma, c.Comment, c.FieldsPerRecord, c.LazyQuotes, c.TrimLeadingSpace = t.comma, '#', -1, true, t.comma != '\t'
	for {
		row, err := c.Read()
		if err == io.EOF {
			break
		}
		line, _ := c.FieldPos(0)
		if err != nil {
			bad.add(line, "", "", "the line cannot be cut into cells: "+err.Error())
			continue
		}
		if strings.TrimSpace(strings.Join(row, "")) != "" {
			t.rows, t.lines = append(t.rows, row), append(t.lines, line)
		}
	}
	if len(t.rows) < 2 {
		bad.add(0, "", "", "the weather table needs a head with column names and at least one line below it")
		return t, false
	}
	return t, true
}

// delimiter returns the sign that cuts the first line that is no comment.
func delimiter(text string) rune {
	for _, line := range strings.Split(text, "\n") {
		if strings.HasPrefix(line, "#") || strings.TrimSpace(line) == "" {
			continue
		}
		for _, sign := range ";\t" {
			if strings.ContainsRune(line, sign) {
				return sign
			}
		}
		break
	}
	return ','
}

// plainText turns the bytes of a spreadsheet's export into UTF-8: marks at the
// start are dropped, UTF-16 and Latin-1 are turned.
func plainText(data []byte) string {
	if len(data) >= 2 && (data[0] == 0xFF && data[1] == 0xFE || data[0] == 0xFE && data[1] == 0xFF) {
		units := make([]uint16, 0, len(data)/2)
		little := data[0] == 0xFF
		for i := 2; i+1 < len(data); i += 2 {
			low, high := data[i], data[i+1]
			if !little {
				low, high = high, low
			}
			units = append(units, uint16(low)|uint16(high)<<8)
		}
		return string(utf16.Decode(units))
	}
	text := strings.TrimPrefix(string(data), "\uFEFF")
	if utf8.ValidString(text) {
		return text
	}
	runes := make([]rune, len(data))
	for i, b := range data {
		runes[i] = rune(b)
	}
	return string(runes)
}

// number reads a cell in the unit of its column; a cell may carry its own sign %.
// Empty cells and the usual words and codes for missing are NaN.
func (t sheet) number(cell string, c column) (float64, error) {
	text := strings.TrimSpace(cell)
	switch strings.ToLower(text) {
	case "", "-", "--", "na", "n/a", "nan", "null", "none", "missing", "m", "---":
		return math.NaN(), nil
	}
	s := c.scale
	bare, percent := strings.CutSuffix(text, "%")
	if percent && (c.means == "humidity" || c.means == "cloud") {
		s = scale{0.01, 0}
	} else if percent {
		return math.NaN(), fmt.Errorf("a percentage is no %s: found %q", nameOf(c.means), text)
	}
	bare = strings.TrimSpace(strings.ReplaceAll(bare, "−", "-"))
	comma, point := strings.LastIndexByte(bare, ','), strings.LastIndexByte(bare, '.')
	if comma > point { // decimal comma, points part thousands
		bare = strings.Replace(strings.ReplaceAll(bare, ".", ""), ",", ".", 1)
	} else {
		bare = strings.ReplaceAll(bare, ",", "")
	}
	v, err := strconv.ParseFloat(bare, 64)
	if err != nil || math.IsInf(v, 0) {
		return math.NaN(), fmt.Errorf("not a number: found %q. Write the number alone, or leave the cell empty if it is not known", text)
	}
	if v <= -900 || v == 9999 || v == 99999 {
		return math.NaN(), nil
	}
	return s.factor*v + s.offset, nil
}
