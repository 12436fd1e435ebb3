package main

import (
	"os"
	"path/filepath"
	"testing"
)

func TestWriteWhole(t *testing.T) {
	folder := t.TempDir()
	name := filepath.Join(folder, "m.txt")
	if err := os.WriteFile(name, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(folder, "link.txt")
	if err := os.Symlink(name, link); err != nil {
		t.Skip("no symbolic links here")
	}
	if err := writeWhole(link, []byte("new")); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(name)
	if err != nil || string(data) != "new" {
		t.Errorf("through a link the file holds %q, %v; want %q", data, err, "new")
	}
	info, err := os.Lstat(name)
	if err != nil || info.Mode() != 0o600 {
		t.Errorf("the file has mode %v, %v; want its old one, -rw-------", info.Mode(), err)
	}
	if info, _ := os.Lstat(link); info.Mode()&os.ModeSymlink == 0 {
		t.Error("the link was replaced by a file")
	}
	if left, _ := filepath.Glob(filepath.Join(folder, ".*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

func TestWriteWholeLeavesNothingBehind(t *testing.T) {
	folder := t.TempDir()
	name := filepath.Join(folder, "there")
	if err := os.Mkdir(name, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := writeWhole(name, []byte("new")); err == nil {
		t.Error("a folder was written over")
	}
	if err := writeWhole(filepath.Join(folder, "missing", "m.txt"), []byte("new")); err == nil {
		t.Error("a file was written into a folder that does not exist")
	}
	if left, _ := filepath.Glob(filepath.Join(folder, ".*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}
