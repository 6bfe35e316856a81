package fonts

import "testing"

// The letters calculations need: Greek, powers, indices, comparison, true minus.
const needed = "αβγδεζηθκλμνπρστφχψωΔΣΩ√²³⁰¹⁴⁵⁶⁷⁸⁹⁻₀₁₂₃₄₅₆₇₈₉·×≤≥−±°µ≈∞∂–—‘’“”…§→′″½¼\u00a0\u202f□"

func TestHoldsTheLettersOfCalculations(t *testing.T) {
	for _, r := range needed {
		if !Has(r) {
			t.Errorf("%q U+%04X is missing", r, r)
		}
	}
}

func TestDigitsHaveOneWidth(t *testing.T) {
	for name, font := range map[string][]byte{"regular": Regular, "semibold": Semibold, "italic": Italic} {
		glyphs := Glyphs(font)
		want := Advance(font, glyphs['0'])
		for _, r := range "123456789−" {
			if got := Advance(font, glyphs[r]); got != want {
				t.Errorf("%s: %q is %d wide, 0 is %d", name, r, got, want)
			}
		}
	}
}

func TestPrintableLosesNothing(t *testing.T) {
	for in, want := range map[string]string{
		"kₜ⋅2":     "k_t·2",
		"σ ≤ 3":    "σ ≤ 3",
		"漢":        "□",
		"a\nb":     "a\nb",
		"5\u2009m": "5\u2009m",
	} {
		if got := Printable(in); got != want {
			t.Errorf("Printable(%q) = %q, want %q", in, got, want)
		}
	}
	for r, with := range spelling {
		for _, letter := range with {
			if !Has(letter) {
				t.Errorf("%q is spelled %q but %q is missing too", r, with, letter)
			}
		}
	}
}
