package dxf

import (
	"bytes"
	"fmt"
	"strings"
)

// Options say how a drawing is read.
type Options struct {
	Unit  Unit    // of the drawing, where the reader knows better than the file
	Chord float64 // furthest a chord may lie from its curve, metres; 0: [DefaultChord]
}

// DefaultChord is how far a chord may lie from its curve, in metres: half a
// millimetre, below what is set out on a slab.
const DefaultChord = 0.0005

// chordWithoutUnit is the same for a drawing whose unit nobody knows, as a share of
// the radius of the curve: 1/2000.
const chordWithoutUnit = 0.0005

// Read reads a drawing, text or binary. What is no line in plan is left out and
// counted in Skipped. The error is an [*Error] with the place in the file, or says
// that the file is no such drawing at all.
func Read(data []byte, o Options) (*Drawing, error) {
	if err := notDrawing(data); err != nil {
		return nil, err
	}
	d := &Drawing{Binary: bytes.HasPrefix(data, []byte(sentinel))}
	read := textTags
	if d.Binary {
		read = binaryTags
	}
	tags, ended, after, err := read(data)
	if err != nil {
		return nil, err
	}
	if !ended {
		d.Notes = append(d.Notes, "The file has no end mark (EOF): it may be cut short.")
	}
	if after {
		d.Notes = append(d.Notes, "There is text after the end mark (EOF); it was not read.")
	}
	f := part(records(tags))
	f.bytes = d.Binary
	if !f.any {
		return nil, fmt.Errorf("the file holds no section of a drawing (no SECTION ... ENTITIES); save it again as DXF")
	}
	f.head(d, data)
	d.Chord = f.chord(o, d)
	r := &reader{d: d, f: f, skipped: map[[2]string]int{}, left: mostThings}
	if err := r.everything(); err != nil {
		return nil, err
	}
	d.layers(f)
	return d, nil
}

// notDrawing recognises files that are something else, with what to do.
func notDrawing(data []byte) error {
	begins := func(s string) bool { return bytes.HasPrefix(data, []byte(s)) }
	switch {
	case len(bytes.TrimSpace(data)) == 0:
		return fmt.Errorf("the file is empty")
	case begins("AC10") || begins("AC1.") || begins("AC2."):
		return fmt.Errorf("this is a drawing in a closed binary form (DWG); save it as DXF, release 2000 or R12")
	case begins("%PDF"):
		return fmt.Errorf("this is a PDF, not a drawing in DXF")
	case begins("PK\x03\x04"):
		return fmt.Errorf("this is a zip; take the .dxf file out of it")
	case begins("\xff\xfe") || begins("\xfe\xff"):
		return fmt.Errorf("the text is coded in UTF-16, which DXF does not allow; save it again as DXF")
	}
	return nil
}

// record is a thing of the file: the group with code 0 and those behind it.
type record struct {
	kind string
	tags []tag
	line int
}

func records(tags []tag) []record {
	var all []record
	for _, t := range tags {
		switch {
		case t.code == 0:
			all = append(all, record{kind: strings.ToUpper(strings.TrimSpace(t.value)), line: t.line})
		case t.code == 999 || len(all) == 0: // a remark
		default:
			r := &all[len(all)-1]
			r.tags = append(r.tags, t)
		}
	}
	return all
}

// file is the parts of a drawing file.
type file struct {
	header   []tag
	layers   []record
	blocks   map[string]block
	entities []record
	any      bool
	bytes    bool
	letters  decoder
}

// block is things drawn elsewhere by an INSERT.
type block struct {
	begin  record
	things []record
}

// part sorts the records by sections.
func part(all []record) *file {
	f := &file{blocks: map[string]block{}}
	section, name, open := "", "", false
	for _, r := range all {
		switch {
		case r.kind == "SECTION":
			section, open = strings.ToUpper(strings.TrimSpace(r.word(2))), false
			if section == "HEADER" {
				f.header = r.tags
			}
			f.any = true
		case r.kind == "ENDSEC":
			section = ""
		case section == "TABLES" && r.kind == "LAYER":
			f.layers = append(f.layers, r)
		case section == "BLOCKS" && r.kind == "BLOCK":
			name, open = strings.ToUpper(r.word(2)), true
			f.blocks[name] = block{begin: r}
		case section == "BLOCKS" && r.kind == "ENDBLK":
			open = false
		case section == "BLOCKS" && open:
			b := f.blocks[name]
			b.things = append(b.things, r)
			f.blocks[name] = b
		case section == "ENTITIES":
			f.entities = append(f.entities, r)
		}
	}
	return f
}

// word returns the first value of a code as it stands.
func (r record) word(code int) string {
	for _, t := range r.tags {
		if t.code == code {
			return t.value
		}
	}
	return ""
}

// variable returns the values of a header variable.
func (f *file) variable(name string) []tag {
	for i, t := range f.header {
		if t.code == 9 && strings.TrimSpace(t.value) == name {
			rest := f.header[i+1:]
			for k, u := range rest {
				if u.code == 9 {
					return rest[:k]
				}
			}
			return rest
		}
	}
	return nil
}

// head fills what the header says.
func (f *file) head(d *Drawing, data []byte) {
	first := func(name string) string {
		if v := f.variable(name); len(v) > 0 {
			return strings.TrimSpace(v[0].value)
		}
		return ""
	}
	d.Version = first("$ACADVER")
	f.letters = decoderFor(d.Version, first("$DWGCODEPAGE"), data)
	d.Letters = f.letters.name
	var n int
	if word := first("$INSUNITS"); word != "" {
		if _, err := fmt.Sscanf(word, "%d", &n); err != nil {
			d.Notes = append(d.Notes, "The unit of the drawing ($INSUNITS) is "+quoted(word)+", which is no number; taken as not said.")
		}
	}
	d.Unit = Unit(n)
	if _, known := d.Unit.Metres(); n != 0 && !known {
		d.Notes = append(d.Notes, fmt.Sprintf("The unit of the drawing ($INSUNITS) is number %d, which is not known here; taken as not said.", n))
		d.Unit = None
	}
}

// chord returns the chord tolerance in drawing units, 0 where the unit is not known.
func (f *file) chord(o Options, d *Drawing) float64 {
	unit := o.Unit
	if unit == None {
		unit = d.Unit
	}
	metres, known := unit.Metres()
	if !known {
		return 0
	}
	if o.Chord > 0 {
		return o.Chord / metres
	}
	return DefaultChord / metres
}

// layers fills the list of layers.
func (d *Drawing) layers(f *file) {
	at := map[string]int{}
	find := func(name string) *Layer {
		key := strings.ToUpper(name)
		if _, there := at[key]; !there {
			at[key] = len(d.Layers)
			d.Layers = append(d.Layers, Layer{Name: name})
		}
		return &d.Layers[at[key]]
	}
	for _, r := range f.layers {
		l := find(f.letters.plain(r.word(2)))
		l.Hidden = strings.HasPrefix(strings.TrimSpace(r.word(62)), "-") || oddFlag(r.word(70))
	}
	for _, line := range d.Lines {
		l := find(line.Layer)
		l.Lines++
		if line.Closed {
			l.Closed++
		}
	}
	for _, t := range d.Texts {
		find(t.Layer).Texts++
	}
}

// oddFlag reports whether the lowest bit of a flag word is set: a frozen layer.
func oddFlag(word string) bool {
	word = strings.TrimSpace(word)
	return word != "" && strings.ContainsRune("13579", rune(word[len(word)-1]))
}

// sameName compares the names of layers and blocks, in which case does not count.
func sameName(a, b string) bool { return strings.EqualFold(a, b) }
