package document

// Mark is the verdict a cell states; empty for none.
type Mark string

// The marks, one a verdict.
const (
	NoMark      Mark = ""
	MarkWithin  Mark = "within"
	MarkNear    Mark = "near"
	MarkUnknown Mark = "unknown"
	MarkExceeds Mark = "exceeds"
)

// Symbol tells the marks apart without colour. None of them is a tick: no
// verdict gives leave to start.
func (m Mark) Symbol() string {
	switch m {
	case MarkWithin:
		return "○"
	case MarkNear:
		return "◐"
	case MarkUnknown:
		return "?"
	case MarkExceeds:
		return "▲"
	}
	return ""
}
