package main

import "unsafe"

// The exports take and give plain 32-bit numbers: no BigInt, no glue.

//go:wasmexport buffer
func exportBuffer(n int32) unsafe.Pointer {
	if n < 1 {
		n = 1
	}
	if int(n) > cap(input) {
		input = make([]byte, n)
	}
	input = input[:cap(input)]
	return unsafe.Pointer(&input[0])
}

//go:wasmexport load
func exportLoad(n int32) int32 { return int32(load(int(n))) }

//go:wasmexport practise
func exportPractise(n int32) int32 { return int32(practise(int(n))) }

//go:wasmexport answer
func exportAnswer(n int32) int32 { return int32(reply(int(n))) }

//go:wasmexport reply
func exportReply() unsafe.Pointer {
	if len(output) == 0 {
		return nil
	}
	return unsafe.Pointer(&output[0])
}
