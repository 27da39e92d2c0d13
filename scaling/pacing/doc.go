// Package pacing knows how what reacts can be added: what piles up meanwhile, which time and
// profile of addition keep the liquor below a temperature, and when the addition is stopped.
// It must not know how a vessel is run, nor how any of it is printed.
//
// A constant rate and portions are the route with another time, assessed again for every
// point. Profiles that answer to what is seen (held to a temperature, stopped and resumed)
// and a slow beginning are the vessel of the review with other inputs, run by the laws of
// the review and by one that reacts as it goes in, on best estimates.
//
// Liquor that is poured on to powder wets all of it with its first few drops: it has no
// profiles and no rule for stopping, which would come too late.
//
// Where all of it could react at once, nothing but less of it helps: then every profile says
// what the liquor could still come to if cooling fails. It never resumes on to a cold pile:
// more goes in only once what waits could no longer bring the liquor to the limit.
package pacing
