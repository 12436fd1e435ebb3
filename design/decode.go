package design

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"

	"rowproof/diag"
)

// longestDocument is how much of a file is read: a pattern is a few dozen
// pages, and a hundred times that is still read.
const longestDocument = 16 << 20

// decode turns the bytes of a file into text, and says what it had to guess.
// Spans of its findings point into the text it returns.
func decode(source []byte) (string, []diag.Finding) {
	var found []diag.Finding
	note := func(severity diag.Severity, code diag.Code, span diag.Span, message, repair string) {
		found = append(found, diag.Finding{Severity: severity, Code: code, Span: span, Message: message, Repair: repair})
	}
	if len(source) > longestDocument {
		source = source[:longestDocument]
		for len(source) > 0 && !utf8.RuneStart(source[len(source)-1]) {
			source = source[:len(source)-1]
		}
		note(diag.Error, CodeTooLong, diag.Span{Start: len(source) - 1, End: len(source) - 1},
			fmt.Sprintf("The file is longer than %d MB; only the beginning was read.", longestDocument>>20), "")
	}
	switch {
	case bytes.HasPrefix(source, []byte{0xef, 0xbb, 0xbf}):
		source = source[3:]
	case bytes.HasPrefix(source, []byte{0xff, 0xfe}), bytes.HasPrefix(source, []byte{0xfe, 0xff}):
		text, err := unicode.UTF16(unicode.LittleEndian, unicode.ExpectBOM).NewDecoder().Bytes(source)
		if err == nil {
			note(diag.Note, CodeEncoding, diag.Span{},
				"The file is written in UTF-16; it was read as such.", "Save the file as UTF-8.")
			source = text
		}
	case !utf8.Valid(source) && looksWestern(source):
		text, err := charmap.Windows1252.NewDecoder().Bytes(source)
		if err == nil {
			note(diag.Note, CodeEncoding, diag.Span{},
				"The file is not written in UTF-8; it was read as Windows text (Western European).", "Save the file as UTF-8.")
			source = text
		}
	}
	text, bad := mend(source)
	return text, append(found, bad...)
}

// looksWestern reports whether bytes that are not UTF-8 can be Windows-1252:
// mostly plain letters, none of the five bytes it leaves unused, and no run
// that is clearly UTF-8.
func looksWestern(source []byte) bool {
	high := 0
	for i, c := range source {
		switch c {
		case 0, 0x81, 0x8d, 0x8f, 0x90, 0x9d:
			return false
		}
		if c >= utf8.RuneSelf {
			high++
			if r, size := utf8.DecodeRune(source[i:]); size > 1 && r != utf8.RuneError && size == 3 {
				return false
			}
		}
	}
	return high*3 <= len(source)
}

// mend replaces bytes that are no text, each by one or more characters that
// are, and reports where they stood. At most a few places are named.
func mend(source []byte) (string, []diag.Finding) {
	if utf8.Valid(source) && bytes.IndexByte(source, 0) < 0 {
		return string(source), nil
	}
	const most = 5
	var b strings.Builder
	var found []diag.Finding
	nuls, wrong := 0, 0
	b.Grow(len(source))
	for i := 0; i < len(source); {
		r, size := utf8.DecodeRune(source[i:])
		at := diag.Span{Start: b.Len(), End: b.Len() + 1}
		switch {
		case r == 0:
			b.WriteByte(' ')
			if nuls++; nuls == 1 {
				found = append(found, diag.Finding{Severity: diag.Warning, Code: CodeNotText, Span: at,
					Message: "There is a character here that no text has (a zero byte); it was read as a space.",
					Repair:  "Save the pattern as plain text."})
			}
		case r == utf8.RuneError && size <= 1:
			b.WriteRune(utf8.RuneError)
			at.End = b.Len()
			if wrong++; wrong <= most {
				found = append(found, diag.Finding{Severity: diag.Warning, Code: CodeNotText, Span: at,
					Message: fmt.Sprintf("There is a byte here that is no letter in UTF-8 (%#02x); it was passed over.", source[i]),
					Repair:  "Save the file as UTF-8."})
			}
		default:
			b.Write(source[i : i+size])
		}
		i += size
	}
	return b.String(), found
}
