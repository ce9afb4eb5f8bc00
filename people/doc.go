// Package people says who is in the house and what they want of its water, and what
// they do when a store runs low or the sky is dull.
//
// Checked against: the published end-use tables in published_test.go (their sums and
// shares), and the laws in laws_test.go.
//
// Left out: arrivals in the middle of a day (people count for whole days), hours at work
// (give a use its own days and hours), and chance (every Monday is alike, so peaks
// between households or within the hour are not seen).
package people
