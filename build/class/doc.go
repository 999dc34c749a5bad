// Package class makes the sheets of a class and marks what comes back: one
// sheet for each learner with facts of its own, a key for the trainer with the
// number of every mistake, a file of answers to fill in, and from that file what
// each learner did, which mistakes were made how often and by whom, and what to
// teach again first.
package class
