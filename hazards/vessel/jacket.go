package vessel

// Jacketed are what the liquid in a jacket comes to while a window lasts: how warm it gets,
// K, and the most heat that goes into it, W. Both are looked for at the steps of the
// integration and between them; zero where the plan has no jacket.
func (r *Run) Jacketed(w *Window) (warmest, load Moment) {
	if r.Path == nil || r.Path.b.jacket == 0 {
		return Moment{}, Moment{}
	}
	if k := w.Bounds; k != nil {
		return Moment{Value: k.Jacket, At: w.From}, Moment{Value: k.Load, At: w.From}
	}
	b, y := r.Path.b, make([]float64, r.Path.b.n)
	look := func(t float64) {
		x := b.pieceAt(t)
		if r.Path.into(t, y) != nil || !x.Jacketed {
			return
		}
		warmest = warmest.or(Moment{Value: y[b.jacket], At: t})
		load = load.or(Moment{Value: x.UA * (y[temperature] - y[b.jacket]), At: t})
	}
	last := w.From
	for _, t := range r.Path.Times() {
		if t < w.From || t > w.To {
			continue
		}
		for j := 1; j < sampled && t > last; j++ {
			look(last + (t-last)*float64(j)/sampled)
		}
		look(t)
		last = t
	}
	return warmest, load
}

// pieceAt is the piece of a plan at a time; the earlier at a switch.
func (b *balance) pieceAt(t float64) *Piece {
	for i := range b.p.Pieces {
		if t <= b.p.Pieces[i].Until {
			return &b.p.Pieces[i]
		}
	}
	return &b.p.Pieces[len(b.p.Pieces)-1]
}
