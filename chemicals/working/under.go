package working

import "slices"

// Under are the lines that line n rests on and that line itself, the last of them,
// numbered from 1 for themselves; none where there is no such line.
func (s *Sheet) Under(n int) []Line {
	if s == nil || n < 1 || n > len(s.Lines) {
		return nil
	}
	as := map[int]int{n: 0}
	todo := []int{n}
	for len(todo) > 0 {
		l := &s.Lines[todo[len(todo)-1]-1]
		todo = todo[:len(todo)-1]
		for _, in := range l.In {
			if _, there := as[in.Line]; !there && in.Line > 0 {
				as[in.Line] = 0
				todo = append(todo, in.Line)
			}
		}
	}
	var out []Line
	for i := range s.Lines {
		if _, there := as[i+1]; there {
			out = append(out, s.Lines[i])
			as[i+1] = len(out)
		}
	}
	for i := range out {
		out[i].N, out[i].In = i+1, slices.Clone(out[i].In)
		for k := range out[i].In {
			out[i].In[k].Line = as[out[i].In[k].Line]
		}
	}
	return out
}
