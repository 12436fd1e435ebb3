package notation

import "reflect"

// Walk visits every step of a line in order, those inside groups and repeats
// after the one they stand in. It goes no deeper where visit returns false.
func Walk(l *Line, visit func(Step) bool) { walk(l.Steps, visit) }

func walk(steps []Step, visit func(Step) bool) {
	for _, s := range steps {
		if !visit(s) {
			continue
		}
		switch s := s.(type) {
		case *Group:
			walk(s.Body, visit)
			walkTimes(s.Times, visit)
		case *Star:
			walk(s.Body, visit)
			walkTimes(s.Times, visit)
		case *Orphan:
			walkTimes(s.Times, visit)
		case *Again:
			walk(s.Ending, visit)
		}
	}
}

func walkTimes(t *Times, visit func(Step) bool) {
	if t != nil {
		walk(t.Ending, visit)
		walk(t.Omit, visit)
	}
}

// Numbers lists every number of a line, label and counts included, each once,
// in the order of the text.
func Numbers(l *Line) []*Number {
	var list []*Number
	leaves(reflect.ValueOf(l), func(v any) {
		if n, ok := v.(*Number); ok && !n.Span.IsZero() {
			list = append(list, n)
		}
	})
	return inOrder(list, func(n *Number) Span { return n.Span })
}

// Measures lists every length of a line.
func Measures(l *Line) []*Measure {
	var list []*Measure
	leaves(reflect.ValueOf(l), func(v any) {
		if m, ok := v.(*Measure); ok {
			list = append(list, m)
		}
	})
	return inOrder(list, func(m *Measure) Span { return m.Span })
}

// leaves visits every pointer to a leaf of the tree.
func leaves(v reflect.Value, visit func(any)) {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			return
		}
		visit(v.Interface())
		leaves(v.Elem(), visit)
	case reflect.Interface:
		if !v.IsNil() {
			leaves(v.Elem(), visit)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			leaves(v.Field(i), visit)
		}
	case reflect.Slice:
		if k := v.Type().Elem().Kind(); k == reflect.Pointer || k == reflect.Interface || k == reflect.Struct {
			for i := range v.Len() {
				leaves(v.Index(i), visit)
			}
		}
	}
}

// inOrder sorts by place and takes out what stands in the tree twice, as a
// passage worked again does.
func inOrder[T any](list []*T, span func(*T) Span) []*T {
	sortBy(list, func(a, b *T) int {
		if d := span(a).Start - span(b).Start; d != 0 {
			return d
		}
		return span(b).End - span(a).End
	})
	out := list[:0]
	for _, x := range list {
		if len(out) > 0 && span(out[len(out)-1]).Start == span(x).Start {
			continue
		}
		out = append(out, x)
	}
	return out
}
