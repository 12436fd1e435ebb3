package check_test

import (
	"os"
	"strings"
	"testing"

	"rowproof/check"
	"rowproof/design"
	"rowproof/fabric"
)

const garment = "../examples/saltmarsh-pullover.md"

func read(b *testing.B, path string) string {
	b.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		b.Fatal(err)
	}
	return string(text)
}

// BenchmarkCheck is the whole check of the nine-size example: reading, working
// every stitch, comparing.
func BenchmarkCheck(b *testing.B) {
	text := read(b, garment)
	b.ReportAllocs()
	stitches := 0
	for b.Loop() {
		stitches = check.Run(design.Read(garment, []byte(text))).Stitches
	}
	b.ReportMetric(float64(stitches)*float64(b.N)/b.Elapsed().Seconds()/1e6, "Mstitches/s")
}

// BenchmarkRead is the reading alone.
func BenchmarkRead(b *testing.B) {
	text := read(b, garment)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		design.Read(garment, []byte(text))
	}
}

// BenchmarkWork is the working alone, rows that are the same again worked once.
func BenchmarkWork(b *testing.B) {
	d := design.Read(garment, []byte(read(b, garment)))
	b.ReportAllocs()
	stitches := 0
	for b.Loop() {
		stitches = 0
		for _, f := range fabric.Work(d) {
			stitches += f.Stitches
		}
	}
	b.ReportMetric(float64(stitches)*float64(b.N)/b.Elapsed().Seconds()/1e6, "Mstitches/s")
}

// BenchmarkWorkAllDifferent works a triangle in which no two rows are the same,
// so that every stitch is worked.
func BenchmarkWorkAllDifferent(b *testing.B) {
	d := design.Read("triangle.txt", []byte(triangle))
	stitches := 0
	for b.Loop() {
		stitches = fabric.Work(d)[0].Stitches
	}
	b.ReportMetric(float64(stitches)*float64(b.N)/b.Elapsed().Seconds()/1e6, "Mstitches/s")
}

// triangle grows by a repeat a row: about 250,000 stitches.
const triangle = `Triangle

Note: Ch 1 does not count as a st.

Ch 4.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (3 sc)
Rows 2-500: Ch 1, 2 sc in first st, *sc in next st; rep from * to last st, 2 sc in last st, turn.
Fasten off.
`

// BenchmarkTenTimesLonger checks the example and a pattern of ten such
// examples, for the ratio of the two.
func BenchmarkTenTimesLonger(b *testing.B) {
	text := read(b, garment)
	_, body, _ := strings.Cut(text[4:], "\n---\n")
	for _, c := range []struct {
		name  string
		times int
	}{{"once", 1}, {"ten", 10}} {
		long := text[:strings.Index(text, "\n---\n")+5] + strings.Repeat(body, c.times)
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				check.Run(design.Read(garment, []byte(long)))
			}
		})
	}
}
