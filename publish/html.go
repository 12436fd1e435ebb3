package publish

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"path/filepath"
	"strings"
	"sync"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"

	"rowproof/design"
	"rowproof/stitch"
)

//go:embed style.css
var styleSheet string

//go:embed page.html.tmpl
var pageTemplate string

// page parses the template when the first page is written, so that other
// commands start fast.
var page = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("page").Parse(pageTemplate))
})

// markdown turns prose into HTML. Raw HTML is left out, and so are links that
// could run anything.
var markdown = sync.OnceValue(func() goldmark.Markdown {
	own := renderer.WithNodeRenderers(util.Prioritized(noPictures{}, 100))
	return goldmark.New(goldmark.WithExtensions(extension.Table), goldmark.WithRendererOptions(own))
})

// noPictures writes the words of a picture in its place: the page fetches
// nothing from anywhere.
type noPictures struct{}

func (noPictures) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(ast.KindImage, func(w util.BufWriter, _ []byte, _ ast.Node, entering bool) (ast.WalkStatus, error) {
		w.WriteString(map[bool]string{true: `<span class="picture">`, false: "</span>"}[entering])
		return ast.WalkContinue, nil
	})
}

// A htmlPage is what the template is filled with.
type htmlPage struct {
	Lang, Title string
	Style       template.CSS
	Parts       []*htmlPart
}

// A htmlPart is a heading, a list of rows, lines of plain prose, or prose that
// was Markdown: one of them.
type htmlPart struct {
	Heading string
	Level   int
	Rows    []htmlRow
	Lines   []string
	Prose   template.HTML

	marked []string // Markdown still to be turned into Prose
	blanks []bool
}

type htmlRow struct {
	Label, Count string
	Lines        []string
}

// HTML writes the pattern as one web page that needs nothing else: no script,
// no picture, no other file. Errors are as for Text.
func HTML(w io.Writer, d *design.Design, opt Options) error {
	e, err := newEdition(d, opt)
	if err != nil {
		return err
	}
	return e.html(w)
}

// html writes the edition as a page.
func (e *edition) html(w io.Writer) error {
	p := htmlPage{Lang: "en-US", Title: e.title(), Style: template.CSS(styleSheet), Parts: e.parts()}
	if e.to == stitch.UK {
		p.Lang = "en-GB"
	}
	if err := e.renderProse(p.Parts); err != nil {
		return err
	}
	if err := page().Execute(w, p); err != nil {
		return fmt.Errorf("could not write the web page: %w", err)
	}
	return nil
}

func (e *edition) title() string {
	for _, l := range e.lines {
		if l.kind == design.Heading {
			return l.text
		}
	}
	if e.design.Title != "" {
		return e.design.Title
	}
	return "Crochet pattern"
}

// parts gathers the lines of the edition: rows that follow each other are one
// list, prose that follows each other one text.
func (e *edition) parts() []*htmlPart {
	var parts []*htmlPart
	isMarkdown := e.isMarkdown()
	hasTitle := false
	for _, l := range e.lines {
		last := &htmlPart{}
		if len(parts) > 0 {
			last = parts[len(parts)-1]
		}
		switch {
		case l.kind == design.Heading:
			level := min(max(l.level, 2), 3)
			if !hasTitle {
				level, hasTitle = 1, true
			}
			parts = append(parts, &htmlPart{Heading: l.text, Level: level})
		case l.kind == design.Instruction || l.kind == design.Foundation || l.kind == design.Assembly && !isMarkdown:
			if last.Rows == nil {
				last = &htmlPart{}
				parts = append(parts, last)
			}
			last.Rows = append(last.Rows, rowOf(l))
		case isMarkdown:
			if last.marked == nil {
				last = &htmlPart{}
				parts = append(parts, last)
			}
			last.marked, last.blanks = append(last.marked, l.marked), append(last.blanks, l.blank)
		default:
			if last.Lines == nil || l.blank {
				last = &htmlPart{}
				parts = append(parts, last)
			}
			last.Lines = append(last.Lines, strings.Split(l.plain(), "\n")...)
		}
	}
	return parts
}

// rowOf returns a line of instructions, its stated count at the end apart.
func rowOf(l *outLine) htmlRow {
	text := l.text
	row := htmlRow{Label: l.label}
	if strings.HasSuffix(text, ")") {
		if i := strings.LastIndex(text, ". ("); i >= 0 {
			text, row.Count = text[:i+1], text[i+2:]
		}
	}
	row.Lines = strings.Split(text, "\n")
	return row
}

// isMarkdown tells whether the prose is Markdown: the file says so by its
// front matter, its name or a heading. In a plain text a star is a star.
func (e *edition) isMarkdown() bool {
	d := e.design
	if d.Front != nil {
		return true
	}
	switch strings.ToLower(filepath.Ext(d.File)) {
	case ".md", ".markdown":
		return true
	}
	for _, l := range d.Lines {
		if l.Kind == design.Heading && strings.HasPrefix(d.Source[l.Start:l.End], "#") {
			return true
		}
	}
	return false
}

// renderProse turns the Markdown of the parts into HTML.
func (e *edition) renderProse(parts []*htmlPart) error {
	for _, p := range parts {
		if p.marked == nil {
			continue
		}
		var text strings.Builder
		for i, l := range p.marked {
			if i > 0 && p.blanks[i] {
				text.WriteByte('\n')
			}
			text.WriteString(l)
			text.WriteByte('\n')
		}
		var out bytes.Buffer
		if err := markdown().Convert([]byte(text.String()), &out); err != nil {
			return fmt.Errorf("could not turn the prose into a web page: %w", err)
		}
		p.Prose = template.HTML(wideTables(out.String()))
	}
	return nil
}

// wideTables lets a table that is wider than the page be moved sideways.
func wideTables(s string) string {
	s = strings.ReplaceAll(s, "<table>", `<div class="wide" tabindex="0"><table>`)
	return strings.ReplaceAll(s, "</table>", "</table></div>")
}
