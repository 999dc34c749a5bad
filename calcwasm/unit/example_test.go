package unit_test

import (
	"fmt"

	"columnbowl/calcwasm/unit"
)

func ExampleRead() {
	feet, _ := unit.Lookup("ft")
	level := unit.Field{Unit: feet, Name: "static level"}
	for _, text := range []string{"180 to 200 ft", "12'6\"", "54 m", "54 m/s"} {
		typed, err := unit.Read(text, level)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(unit.Format(typed.Low, feet), "to", unit.Format(typed.High, feet), feet.Print)
	}
	// Output:
	// 180 to 200 ft
	// 12.5 to 12.5 ft
	// 177.2 to 177.2 ft
	// I read 54 m/s, a velocity; static level wants a length such as 54 m or 177 ft.
}

func ExampleLookup() {
	loss, _ := unit.Lookup("ft/100ft")
	capacity, _ := unit.Lookup("gpm")
	metric, _ := unit.Lookup("m3/h")
	fmt.Println(unit.FormatPlain(0.0266, loss), loss.Symbol)
	fmt.Println(unit.Format(capacity.ToSI(400), metric), metric.Print)
	_, known := unit.Lookup("psig/ft")
	fmt.Println(known)
	// Output:
	// 2.66 ft/100ft
	// 90.85 m³/h
	// false
}
