// Command calcwasm is the engine's door to a page: a WebAssembly module of the
// kind “reactor” (GOOS=wasip1, buildmode c-shared). A page puts UTF-8 text into
// a buffer, calls load once with the packed book and then answer with each
// request, and reads the reply from memory. Nothing else crosses the door.
//
// A panic inside a call is caught and told as an error, so that the instance
// lives on. Memory may move when it grows: a page takes a new view of it after
// every call.
package main

import (
	"errors"
	"runtime"

	"columnbowl/calcwasm/answer"
)

func main() {} // a reactor has no life of its own

var (
	input  []byte
	output []byte
	desk   *answer.Desk
)

// load takes a packed book of n bytes from the buffer, or, behind it, the words
// for searching and asking. It returns 0, or minus the length of the reason why
// they cannot be read.
func load(n int) (status int) {
	defer func() {
		if recover() != nil {
			output = []byte("the engine failed while it read the book")
			status = -len(output)
		}
	}()
	if answer.IsWords(input[:n]) {
		return loadWords(n)
	}
	d, err := answer.Open(input[:n])
	if err != nil {
		output = []byte(err.Error())
		return -len(output)
	}
	desk = d
	return 0
}

// loadWords takes the words of the book that is loaded.
func loadWords(n int) int {
	err := errors.New("the words came before their book")
	if desk != nil {
		err = desk.Words(input[:n])
	}
	if err == nil {
		return 0
	}
	output = []byte(err.Error())
	return -len(output)
}

// reply works out a request of n bytes and returns the length of the reply,
// or minus the length of an error text.
func reply(n int) (length int) {
	defer func() {
		if recover() != nil {
			output = []byte("the engine failed at this request")
			length = -len(output)
		}
	}()
	if desk == nil {
		output = []byte("no book is loaded")
		return -len(output)
	}
	output = desk.Append(output[:0], input[:n])
	// The garbage collector's workers get the processor only when it is yielded:
	// without this, memory grew by 200 kB with each request and was never given
	// back (measured: 2.8 GB after 10,000 requests, 9 MB with it).
	runtime.Gosched()
	return len(output)
}
