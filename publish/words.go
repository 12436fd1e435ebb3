package publish

import (
	"fmt"
	"strconv"
	"strings"
)

var numberWords = [...]string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}

// numberWord returns n as it would be written in a sentence.
func numberWord(n int) string {
	if n >= 0 && n < len(numberWords) {
		return numberWords[n]
	}
	return grouped(n)
}

// grouped returns n with a comma between thousands: 31,544.
func grouped(n int) string {
	s := strconv.Itoa(n)
	sign := ""
	if n < 0 {
		sign, s = "-", s[1:]
	}
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return sign + s
}

// plural returns "1 row", "2 rows".
func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%s %ss", grouped(n), noun)
}

// listed joins words as a sentence does: "a, b and c".
func listed(words []string) string {
	switch len(words) {
	case 0:
		return ""
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// lineList names lines: "line 4", "lines 4, 7 and 9".
func lineList(lines []int) string {
	if len(lines) == 1 {
		return "line " + strconv.Itoa(lines[0])
	}
	var words []string
	for i := 0; i < len(lines); {
		if len(words) == mostLines {
			words = append(words, plural(len(lines)-i, "other line"))
			break
		}
		j := i + 1
		for j < len(lines) && lines[j] == lines[j-1]+1 {
			j++
		}
		if j-i < 3 {
			words = append(words, strconv.Itoa(lines[i]))
			i++
			continue
		}
		words = append(words, fmt.Sprintf("%d-%d", lines[i], lines[j-1]))
		i = j
	}
	return "lines " + listed(words)
}

// mostLines is how many lines or runs of lines a sentence names.
const mostLines = 20

func isLetter(c byte) bool { return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' }
