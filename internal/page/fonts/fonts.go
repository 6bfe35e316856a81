// Package fonts holds the letters reports are set in: Source Sans 3 (SIL Open
// Font License 1.1, see LICENSE.md), regular, semibold and italic. Its digits all
// have one width, so numbers line up.
//
// [Has] tells whether a letter is in all three; [Printable] spells a text with the
// letters there are.
package fonts

import (
	_ "embed"
	"encoding/binary"
	"strings"
	"sync"
)

// The three fonts as TrueType files.
var (
	//go:embed SourceSans3-Regular.ttf
	Regular []byte
	//go:embed SourceSans3-Semibold.ttf
	Semibold []byte
	//go:embed SourceSans3-It.ttf
	Italic []byte
)

// spelling replaces letters the fonts lack by ones they have.
var spelling = map[rune]string{
	'⋅': "·", '∝': "~", '∈': "in", '\u2009': "\u202f", '\u200a': "\u202f", '\u2011': "-", '\t': " ",
	'ₐ': "_a", 'ₑ': "_e", 'ₒ': "_o", 'ₓ': "_x", 'ₕ': "_h", 'ₖ': "_k", 'ₗ': "_l", 'ₘ': "_m",
	'ₙ': "_n", 'ₚ': "_p", 'ₛ': "_s", 'ₜ': "_t", 'ᵢ': "_i", 'ⱼ': "_j", 'ᵣ': "_r", 'ᵤ': "_u", 'ᵥ': "_v",
}

var loaded = sync.OnceValue(func() [3]map[rune]uint16 {
	return [3]map[rune]uint16{Glyphs(Regular), Glyphs(Semibold), Glyphs(Italic)}
})

// Has reports whether all three fonts hold the letter.
func Has(r rune) bool {
	for _, glyphs := range loaded() {
		if glyphs[r] == 0 {
			return false
		}
	}
	return true
}

// Printable returns the text with every letter the fonts lack replaced: by a
// close spelling where there is one, otherwise by a white square, so that
// nothing disappears unseen.
func Printable(s string) string {
	plain := true
	for _, r := range s {
		if r != '\n' && (r > '~' || r < ' ') && !Has(r) {
			plain = false
			break
		}
	}
	if plain {
		return s
	}
	var out strings.Builder
	for _, r := range s {
		other, known := spelling[r]
		switch {
		case r == '\n' || Has(r):
			out.WriteRune(r)
		case known:
			out.WriteString(other)
		default:
			out.WriteRune('□')
		}
	}
	return out.String()
}

// Missing returns the letters of a text that neither the fonts hold nor a
// spelling replaces.
func Missing(s string) []rune {
	var missing []rune
	for _, r := range s {
		if _, known := spelling[r]; !known && r != '\n' && !Has(r) {
			missing = append(missing, r)
		}
	}
	return missing
}

// Glyphs reads the letters of a TrueType font: the character map of format 4,
// which holds every letter up to U+FFFF.
func Glyphs(font []byte) map[rune]uint16 {
	u16 := func(at int) int { return int(binary.BigEndian.Uint16(font[at:])) }
	u32 := func(at int) int { return int(binary.BigEndian.Uint32(font[at:])) }
	cmap := 0
	for i := range u16(4) {
		if at := 12 + 16*i; string(font[at:at+4]) == "cmap" {
			cmap = u32(at + 8)
		}
	}
	if cmap == 0 {
		panic("fonts: no character map")
	}
	glyphs := map[rune]uint16{}
	for i := range u16(cmap + 2) {
		table := cmap + u32(cmap+4+8*i+4)
		if u16(table) != 4 {
			continue
		}
		segments := u16(table+6) / 2
		ends, starts := table+14, table+16+2*segments
		deltas, offsets := starts+2*segments, starts+4*segments
		for k := range segments {
			delta, offset := u16(deltas+2*k), u16(offsets+2*k)
			for c := u16(starts + 2*k); c <= u16(ends+2*k) && c != 0xffff; c++ {
				g := c + delta
				if offset != 0 {
					if g = u16(offsets + 2*k + offset + 2*(c-u16(starts+2*k))); g != 0 {
						g += delta
					}
				}
				if g &= 0xffff; g != 0 {
					glyphs[rune(c)] = uint16(g)
				}
			}
		}
	}
	return glyphs
}

// Advance returns the width of a glyph in thousandths of the letter size.
func Advance(font []byte, glyph uint16) int {
	u16 := func(at int) int { return int(binary.BigEndian.Uint16(font[at:])) }
	tables := map[string]int{}
	for i := range u16(4) {
		at := 12 + 16*i
		tables[string(font[at:at+4])] = int(binary.BigEndian.Uint32(font[at+8:]))
	}
	perEm := u16(tables["head"] + 18)
	last := u16(tables["hhea"]+34) - 1
	return u16(tables["hmtx"]+4*min(int(glyph), last)) * 1000 / perEm
}
