// Package search finds pages of the book by words. The index is made when the
// book is bound and searched by the engine, so that both sides split a text
// into words and cut the words down to their stems alike.
//
// Conventions. A word is a run of letters and digits in small letters; a hyphen
// divides words. A stem is what Stem makes of a word; two words are the same
// when their stems are. Results have a fixed order: the same index and the same
// query give the same list.
package search
