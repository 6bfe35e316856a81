package page

import (
	"strings"

	"slabwright/internal/page/fonts"
)

// Run is a stretch of text in one dress. A Link names an [Document.Anchor].
type Run struct {
	Words  string
	Bold   bool
	Italic bool
	Quiet  bool
	Shift  int // 1 raised, −1 lowered, in smaller letters
	Link   string
}

// set is the size a run is set in, and how far below the foot line it stands, in
// points.
func (r Run) set(size float64) (points, below float64) {
	const smaller, lowered, raised = 0.72, 0.18, 0.36
	switch {
	case r.Shift < 0:
		return smaller * size, lowered * size
	case r.Shift > 0:
		return smaller * size, -raised * size
	}
	return size, 0
}

// Text is runs one after another; "\n" starts a new line.
type Text []Run

// Plain returns text in the ordinary dress.
func Plain(words string) Text { return Text{{Words: words}} }

// Bold returns text in semibold.
func Bold(words string) Text { return Text{{Words: words, Bold: true}} }

// Quiet returns text in the quiet colour.
func Quiet(words string) Text { return Text{{Words: words, Quiet: true}} }

// Italic returns text in italic.
func Italic(words string) Text { return Text{{Words: words, Italic: true}} }

// Join puts texts one after another.
func Join(texts ...Text) Text {
	var all Text
	for _, t := range texts {
		all = append(all, t...)
	}
	return all
}

// String returns the words alone.
func (t Text) String() string {
	var s strings.Builder
	for _, r := range t {
		s.WriteString(r.Words)
	}
	return s.String()
}

// word is what may not be broken: pieces of runs with no space between.
type word struct {
	pieces []Run
	width  float64
	newRow bool // starts a line whatever room there is
}

// row is one set line.
type row struct {
	pieces []Run
	width  float64
}

// words cuts a text at its spaces and line ends.
func (d *Document) words(t Text, size float64) []word {
	var all []word
	var now word
	flush := func() {
		if len(now.pieces) > 0 {
			all = append(all, now)
		}
		now = word{}
	}
	for _, run := range t {
		clean := fonts.Printable(run.Words)
		from := 0
		for i, r := range clean {
			if r != ' ' && r != '\n' {
				continue
			}
			d.piece(&now, run, clean[from:i], size)
			flush()
			if r == '\n' {
				now.newRow = true
				if len(all) > 0 && all[len(all)-1].newRow && len(all[len(all)-1].pieces) == 0 {
					continue
				}
				all = append(all, word{newRow: true})
				now.newRow = false
			}
			from = i + 1
		}
		d.piece(&now, run, clean[from:], size)
	}
	flush()
	return all
}

func (d *Document) piece(w *word, run Run, words string, size float64) {
	if words == "" {
		return
	}
	run.Words = words
	w.pieces = append(w.pieces, run)
	w.width += d.width(run, size)
}

// width returns the width of a run in mm.
func (d *Document) width(r Run, size float64) float64 {
	size, _ = r.set(size)
	d.dress(r, size)
	return d.doc.GetStringWidth(r.Words)
}

// rows breaks a text into lines no wider than width. A word wider than that is
// broken between letters.
func (d *Document) rows(t Text, width, size float64) []row {
	var rows []row
	var now row
	space := d.width(Run{Words: " "}, size)
	any := false
	flush := func() { rows, now, any = append(rows, now), row{}, false }
	for _, w := range d.words(t, size) {
		if w.newRow && len(w.pieces) == 0 {
			flush()
			continue
		}
		if any && now.width+space+w.width > width {
			flush()
		}
		for w.width > width {
			head, rest := d.breakWord(w, width, size)
			if len(head.pieces) == 0 {
				break
			}
			now = row{head.pieces, head.width}
			flush()
			w = rest
		}
		if any {
			last := &now.pieces[len(now.pieces)-1]
			last.Words += " "
			now.width += space
		}
		for _, p := range w.pieces {
			if n := len(now.pieces); n > 0 && sameDress(now.pieces[n-1], p) {
				now.pieces[n-1].Words += p.Words
			} else {
				now.pieces = append(now.pieces, p)
			}
		}
		now.width += w.width
		any = true
	}
	if any || len(rows) == 0 {
		flush()
	}
	return rows
}

// breakWord cuts a word that is wider than the column at the last letter that
// fits; at least one letter is taken.
func (d *Document) breakWord(w word, width, size float64) (head, rest word) {
	for i, p := range w.pieces {
		pw := d.width(p, size)
		if head.width+pw <= width {
			head.pieces = append(head.pieces, p)
			head.width += pw
			continue
		}
		letters := []rune(p.Words)
		n := len(letters)
		for n > 0 && head.width+d.width(Run{Words: string(letters[:n]), Bold: p.Bold, Italic: p.Italic}, size) > width {
			n--
		}
		if n == 0 && len(head.pieces) == 0 {
			n = 1
		}
		if n > 0 {
			q := p
			q.Words = string(letters[:n])
			head.pieces = append(head.pieces, q)
			head.width += d.width(q, size)
		}
		p.Words = string(letters[n:])
		rest.pieces = append([]Run{}, w.pieces[i:]...)
		rest.pieces[0] = p
		if p.Words == "" {
			rest.pieces = rest.pieces[1:]
		}
		break
	}
	for _, p := range rest.pieces {
		rest.width += d.width(p, size)
	}
	return head, rest
}

func sameDress(a, b Run) bool {
	a.Words, b.Words = "", ""
	return a == b
}

// lead is the distance between lines in mm for letters of so many points.
func lead(size float64) float64 {
	if size < SmallSize {
		return size * 25.4 / 72 * 1.19
	}
	return size * 25.4 / 72 * 1.3
}
