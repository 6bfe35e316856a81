package dxf

import (
	"bytes"
	"encoding/binary"
	"math"
	"strconv"
)

// sentinel begins a binary drawing.
const sentinel = "AutoCAD Binary DXF\r\n\x1a\x00"

// valueKind is how the value behind a group code is stored in a binary file.
type valueKind int

const (
	words valueKind = iota
	real64
	int16s
	int32s
	int64s
	flag8
	chunk
)

// kindOf returns how values of a group code are stored. Source: table of group code
// value types of the DXF reference, from memory.
func kindOf(code int) valueKind {
	in := func(low, high int) bool { return code >= low && code <= high }
	switch {
	case in(10, 59), in(110, 149), in(210, 239), in(460, 469), in(1010, 1059):
		return real64
	case in(60, 79), in(170, 179), in(270, 289), in(370, 389), in(400, 409), in(1060, 1070):
		return int16s
	case in(90, 99), in(420, 429), in(440, 449), code == 1071:
		return int32s
	case in(160, 169):
		return int64s
	case in(290, 299):
		return flag8
	case in(310, 319), code == 1004:
		return chunk
	}
	return words
}

// binaryTags reads the groups of a binary file.
func binaryTags(data []byte) (tags []tag, ended, after bool, err error) {
	r := binaryReader{data: data, at: len(sentinel)}
	// Up to release 12 a code is one byte, later two: the first group is 0 SECTION.
	r.narrow = len(data) > r.at+1 && data[r.at+1] != 0
	for r.at < len(data) {
		at := r.at
		code, ok := r.code()
		value, good := "", false
		if ok {
			value, good = r.value(code)
		}
		if !ok || !good {
			return nil, false, false, &Error{Line: at, Code: code, Found: "the end of the file", Want: "a whole group; the file may be cut short", Bytes: true}
		}
		if code == 0 && value == "EOF" {
			return tags, true, len(bytes.Trim(data[r.at:], "\x00\x1a")) > 0, nil
		}
		tags = append(tags, tag{code, value, at})
	}
	return tags, false, false, nil
}

type binaryReader struct {
	data   []byte
	at     int
	narrow bool
}

func (r *binaryReader) take(n int) ([]byte, bool) {
	if n < 0 || n > len(r.data)-r.at {
		return nil, false
	}
	b := r.data[r.at : r.at+n]
	r.at += n
	return b, true
}

func (r *binaryReader) code() (int, bool) {
	if !r.narrow {
		b, ok := r.take(2)
		if !ok {
			return -1, false
		}
		return int(int16(binary.LittleEndian.Uint16(b))), true
	}
	b, ok := r.take(1)
	if !ok {
		return -1, false
	}
	if b[0] < 255 {
		return int(b[0]), true
	}
	if b, ok = r.take(2); !ok { // extended data: 255, then the code in two bytes
		return -1, false
	}
	return int(binary.LittleEndian.Uint16(b)), true
}

// value reads the value behind a code as the text it would have in a text file.
func (r *binaryReader) value(code int) (string, bool) {
	whole := func(n int) (string, bool) {
		b, ok := r.take(n)
		if !ok {
			return "", false
		}
		var wide [8]byte
		copy(wide[:], b)
		v := int64(binary.LittleEndian.Uint64(wide[:]))
		if n == 2 {
			v = int64(int16(v))
		} else if n == 4 {
			v = int64(int32(v))
		}
		return strconv.FormatInt(v, 10), true
	}
	switch kindOf(code) {
	case real64:
		b, ok := r.take(8)
		if !ok {
			return "", false
		}
		return strconv.FormatFloat(math.Float64frombits(binary.LittleEndian.Uint64(b)), 'g', -1, 64), true
	case int16s:
		return whole(2)
	case int32s:
		return whole(4)
	case int64s:
		return whole(8)
	case flag8:
		return whole(1)
	case chunk:
		n, ok := r.take(1)
		if !ok {
			return "", false
		}
		b, ok := r.take(int(n[0]))
		return string(b), ok
	}
	end := bytes.IndexByte(r.data[r.at:], 0)
	if end < 0 {
		return "", false
	}
	b, _ := r.take(end + 1)
	return string(b[:end]), true
}
