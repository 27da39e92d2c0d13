package draft

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"

	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/reports/document"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// Control is the head of page 1. What stands in the foot of every sheet is not printed
// there again.
func (b *Draft) Control() document.Block {
	site, limits := digests(b.Review.Case.Site, b.Review.Case.Limits)
	return document.Facts{Pairs: []document.Pair{
		{Name: words.Of("control.digest"), Value: b.DigestText()},
		{Name: words.Of("control.date"), Value: plain.Fold(b.Route().Date)},
		{Name: words.Of("control.version"), Value: b.VersionText()},
		{Name: words.Of("control.page"), Value: words.Of("control.page_value")},
		{Name: words.Of("control.state"), Value: words.Of("control.draft")},
		{Name: words.Of("control.site"), Value: short(site), Screen: true},
		{Name: words.Of("control.limits"), Value: short(limits), Screen: true},
		{Name: words.Of("control.data"), Value: short(b.Options.DataDigest), Screen: true},
	}}
}

// ControlLine is what every sheet of a review carries.
func (b *Draft) ControlLine() string {
	return ControlOf(b.Options, b.Review.Case.Site, b.Review.Case.Limits, b.Route().Digest)
}

// mostRoutes is how many routes a control line names; more are named by one digest.
const mostRoutes = 2

// ControlOf is the control line of a document on some routes: by what files, data and
// program it was made. Papers on which another verdict stands have another.
func ControlOf(o Options, s *route.Site, l *limit.Set, routes ...string) string {
	site, limits := digests(s, l)
	of := words.Of("control.of_route", short(strings.Join(routes, "")))
	if n := len(routes); n > 1 {
		named := make([]string, n)
		for i, r := range routes {
			named[i] = short(r)
		}
		if n > mostRoutes {
			sum := sha256.Sum256([]byte(strings.Join(routes, "\n")))
			named = []string{short(hex.EncodeToString(sum[:]))}
		}
		of = words.Of("control.of_routes", n, strings.Join(named, " "))
	}
	line := words.Of("control.line", of, short(site), short(limits), short(o.DataDigest), words.OrNone(o.Version))
	if o.Brief {
		line += words.Of("control.brief")
	}
	if o.Asked != "" {
		line += words.Of("control.asked", o.Asked)
	}
	return line
}

// ReviewedWith names the site and the limits that a route was reviewed with where it is held
// beside one with others; empty where they are the same.
func ReviewedWith(was, to *route.Case) string {
	site, limits := digests(was.Site, was.Limits)
	if a, b := digests(to.Site, to.Limits); a == site && b == limits {
		return ""
	}
	return words.Of("control.reviewed_with", short(site), short(limits))
}

// digests are those of the site file and of the file of local limits, "" without one.
func digests(s *route.Site, l *limit.Set) (site, limits string) {
	if s != nil {
		site = s.Digest
	}
	if l != nil {
		limits = l.Digest
	}
	return site, limits
}

func short(digest string) string { return words.OrNone(plain.ShortDigest(digest)) }

func (b *Draft) DigestText() string {
	if d := plain.ShortDigest(b.Route().Digest); d != "" {
		return d
	}
	return words.Of("value.none_given")
}

func (b *Draft) VersionText() string {
	return words.Of("control.version_value", words.OrNone(b.Options.Version), words.OrNone(b.Options.DataVersion))
}
