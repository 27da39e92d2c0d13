// Package words knows the sentences for what the calculation says by a key: what is
// missing, and what settles it. It must not know how a review is laid out, nor work
// anything out.
package words
