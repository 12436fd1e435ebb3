package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// maxPattern is the largest file that is read, in bytes. The longest patterns
// are under a megabyte.
const maxPattern = 64 << 20

// readPattern reads the file named, or standard input for "-". Its errors are
// whole sentences.
func (sh *shell) readPattern(name string) ([]byte, error) {
	if name == "-" {
		return readAll(sh.in, "what came on standard input")
	}
	info, err := os.Stat(name)
	if err != nil {
		return nil, plainError("read", name, err)
	}
	if info.IsDir() {
		return nil, fmt.Errorf("%s is a folder; name the pattern file in it, as in %s", name, filepath.Join(name, "pattern.md"))
	}
	if info.Mode().IsRegular() && info.Size() > maxPattern {
		return nil, tooLarge(name)
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, plainError("read", name, err)
	}
	defer f.Close()
	return readAll(f, name)
}

func readAll(r io.Reader, name string) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxPattern+1))
	if err != nil {
		return nil, plainError("read", name, err)
	}
	if len(data) > maxPattern {
		return nil, tooLarge(name)
	}
	return data, nil
}

func tooLarge(name string) error {
	return fmt.Errorf("%s is larger than %d MB; that is no pattern", name, maxPattern>>20)
}

// plainError says in plain words why a file could not be read or written.
func plainError(doing, name string, err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist) && doing == "read":
		return fmt.Errorf("there is no file %s", name)
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("could not %s %s: its folder does not exist", doing, name)
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("could not %s %s: you may not %s it", doing, name, doing)
	}
	var path *fs.PathError
	if errors.As(err, &path) {
		err = path.Err
	}
	return fmt.Errorf("could not %s %s: %w", doing, name, err)
}

// writeWhole writes data to the file named, whole or not at all: first beside
// it under another name, then on the disk, then in its place. A file that
// stands there already keeps its permissions.
func writeWhole(name string, data []byte) (err error) {
	if target, e := filepath.EvalSymlinks(name); e == nil {
		name = target
	}
	mode := fs.FileMode(0o644)
	if info, e := os.Stat(name); e == nil {
		if info.IsDir() {
			return fmt.Errorf("could not write %s: it is a folder", name)
		}
		mode = info.Mode().Perm()
	}
	folder := filepath.Dir(name)
	f, err := os.CreateTemp(folder, ".rowproof-*")
	if err != nil {
		return plainError("write", name, err)
	}
	defer func() {
		if err != nil {
			f.Close()
			os.Remove(f.Name())
			err = plainError("write", name, err)
		}
	}()
	if _, err = f.Write(data); err != nil {
		return err
	}
	if err = f.Chmod(mode); err != nil {
		return err
	}
	if err = f.Sync(); err != nil {
		return err
	}
	if err = f.Close(); err != nil {
		return err
	}
	if err = os.Rename(f.Name(), name); err != nil {
		return err
	}
	syncFolder(folder)
	return nil
}

// syncFolder makes sure that the new name is on the disk too. Some systems
// cannot sync a folder; the file itself is safe then all the same.
func syncFolder(folder string) {
	if d, err := os.Open(folder); err == nil {
		d.Sync()
		d.Close()
	}
}

// sameFile tells whether two names lead to one file.
func sameFile(a, b string) bool {
	x, err := os.Stat(a)
	if err != nil {
		return false
	}
	y, err := os.Stat(b)
	return err == nil && os.SameFile(x, y)
}
