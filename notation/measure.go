package notation

// measure reads a length: "14 (14½, 15) in [35.5 (37, 38) cm]".
func (p *parser) measure() *Measure {
	from := p.i
	m := p.oneMeasure()
	if m == nil {
		p.i = from
		return nil
	}
	at := p.i
	if (p.has("[") || p.has("(") || p.has("/")) && m.Unit != NoUnit {
		pair := p.peek(0).pair
		p.i++
		if also := p.oneMeasure(); also != nil && also.Unit != m.Unit && (pair < 0 || p.i == pair) {
			m.Also = also
			if pair >= 0 {
				p.i = pair + 1
			}
		} else {
			p.i = at
		}
	}
	m.Span = p.span(from)
	return m
}

func (p *parser) oneMeasure() *Measure {
	from := p.i
	m := &Measure{}
	switch t := p.peek(0); {
	case t.kind == live:
		m.Live = t.text
		p.i++
	case t.kind == number:
		m.Values = append(m.Values, float64(t.n)+t.frac)
		p.i++
		p.measureUnit(m)
		p.measureSizes(m)
	case (t.text == "(" || t.text == "[") && t.pair > 0 && p.peek(1).kind == number:
		p.measureSizes(m)
	default:
		return nil
	}
	p.measureUnit(m)
	if m.Unit == NoUnit {
		p.i = from
		return nil
	}
	m.Span = p.span(from)
	return m
}

func (p *parser) measureSizes(m *Measure) {
	for {
		t := p.peek(0)
		switch {
		case (t.text == "(" || t.text == "[" || t.text == "{") && t.pair > 0:
			var list []float64
			unit := NoUnit
			for i := p.i + 1; i < t.pair; i++ {
				switch u := &p.toks[i]; {
				case u.kind == number:
					list = append(list, float64(u.n)+u.frac)
				case u.kind == mark && anyOf(u.text, ",|;|:|/|-|--|\"|"):
				case u.kind == word && anyOf(u.text, "in|cm|inches|inch|ins|mm|"):
					unit = unitOf(u.text)
				default:
					return
				}
			}
			if len(list) == 0 || unit != NoUnit && m.Unit != NoUnit && unit != m.Unit {
				return
			}
			m.Values = append(m.Values, list...)
			p.i = t.pair + 1
		case t.text == "," && p.peek(1).kind == number && len(m.Values) < p.opt.Sizes && len(m.Values) > 0:
			p.i++
			m.Values = append(m.Values, float64(p.peek(0).n)+p.peek(0).frac)
			p.i++
		case (t.text == "-" || t.text == "--") && p.peek(1).kind == number && len(m.Values) > 0:
			p.i++
			m.Values = append(m.Values, float64(p.peek(0).n)+p.peek(0).frac)
			p.i++
		default:
			return
		}
	}
}

func (p *parser) measureUnit(m *Measure) {
	if m.Unit != NoUnit {
		return
	}
	if p.has("\"") || p.has("'", "'") {
		m.Unit = Inch
		p.i++
		p.take("'")
		return
	}
	if u := unitOf(p.peek(0).text); u != NoUnit && p.peek(0).kind == word {
		if p.peek(0).text == "in" && p.peek(1).kind == word && anyOf(p.peek(1).text, "next|each|first|last|same|ring|the|st|sts|top|") {
			return
		}
		m.Unit = u
		p.i++
		if p.has(".") && p.i < p.end && !p.peek(0).space && p.peek(1).kind == word {
			p.i++
		}
	}
}

func unitOf(s string) Unit {
	switch s {
	case "in", "ins", "inch", "inches":
		return Inch
	case "cm", "cms", "centimetres", "centimeters", "centimetre", "centimeter":
		return Centimetre
	case "mm", "millimetres", "millimeters":
		return Millimetre
	}
	return NoUnit
}
