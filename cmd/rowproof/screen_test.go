package main

import (
	"os"
	"testing"

	"rowproof/publish"
)

func TestColourIsForTerminals(t *testing.T) {
	file, err := os.CreateTemp(t.TempDir(), "")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if got := screenOf(file); got != (publish.Screen{}) {
		t.Errorf("a file is shown as %+v; want no colour and the usual width", got)
	}
	terminal, err := os.OpenFile("/dev/ptmx", os.O_RDWR, 0)
	if err != nil {
		t.Skip("no terminal to open here")
	}
	defer terminal.Close()
	for _, tt := range []struct {
		noColour, term string
		want           bool
	}{
		{"", "xterm", true},
		{"1", "xterm", false},
		{"", "dumb", false},
	} {
		t.Setenv("NO_COLOR", tt.noColour)
		t.Setenv("TERM", tt.term)
		if got := screenOf(terminal).Colour; got != tt.want {
			t.Errorf("with NO_COLOR=%q TERM=%q a terminal has colour: %v; want %v", tt.noColour, tt.term, got, tt.want)
		}
	}
}

func TestNearest(t *testing.T) {
	names := []string{"check", "read", "write", "explain"}
	for word, want := range map[string]string{
		"chekc": "check", "cehck": "check", "Write": "write", "wrte": "write", "reed": "read", "xyz": "", "publish": "",
	} {
		if got := nearest(word, names); got != want {
			t.Errorf("nearest(%q) = %q; want %q", word, got, want)
		}
	}
}
