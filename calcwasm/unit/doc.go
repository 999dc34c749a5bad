// Package unit knows the units of the pump trade: it looks them up, composes
// them, converts numbers, reads what people type and formats results.
//
// Conventions, once for the whole package:
//
//   - Inside, every number is in SI: metres, kilograms, seconds, kelvins,
//     radians, amperes, and the book's money. A Unit says how a number in it
//     becomes an SI number: SI = number*Factor + Offset. Only degF and degC
//     have an offset.
//   - Angle is a base dimension. A rotational speed (rpm) is therefore no
//     frequency (Hz), and a torque is an energy per angle, so that
//     torque = power / speed agrees in its dimensions.
//   - A gauge pressure stays a gauge pressure: 60 psig becomes 413,685 Pa above
//     the atmosphere. Nothing here adds the atmosphere.
//   - Every product that is added to something is wrapped in float64(), so that
//     a processor with fused multiply-add gives the same bits as the others.
//   - Factors are Go constant expressions of the exact definitions, so each is
//     rounded once.
//   - Errors of reading are *ReadError; their Message is a whole sentence for
//     the person who typed.
package unit
