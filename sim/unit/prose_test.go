package unit

import "testing"

func TestProse(t *testing.T) {
	for text, want := range map[string]string{ // [C] from the factors in unit.go
		"Hose laid outside 6 to 8 ft of the curb": "Hose laid outside 1.8 to 2.4 m of the curb",
		"150 ± 10 psi":                              "1034 ± 69 kPa",
		"Intake below 20 psi.":                      "Intake below 138 kPa.",
		"at least 95 % of 500 gal":                  "at least 95 % of 1893 L",
		"25 ft of 4 in":                             "7.6 m of 102 mm",
		"2½ in hose, a 1⅛ in tip at 50 psi":         "64 mm hose, a 29 mm tip at 345 kPa",
		"two 150 ft 1¾ lines of 150 gpm at 100 psi": "two 45.7 m 1¾ lines of 568 L/min at 689 kPa",
		"All 2 in the cab":                          "All 2 in the cab",
		"Water in the pump above 200 °F":            "Water in the pump above 93 °C",
		"(12 gpm)":                                  "(45 L/min)",
		"between −30 and 400 psi":                   "between −207 and 2758 kPa",
		"5–10 psi":                                  "34–69 kPa",
		"Waited 4 s at 700 rpm and 12 V":            "Waited 4 s at 700 rpm and 12 V",
		"":                                          "",
		"psi":                                       "psi",
		"-9 inHg":                                   "−30.5 kPa",
		"Engine 41 back in service.":                "Engine 41 back in service.",
		"no more than 25 ft of slack, at least 3 s, above 25 psi": "no more than 7.6 m of slack, at least 3 s, above 172 kPa",
	} {
		if got := SI.Prose(text); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
		if got := US.Prose(text); got != text {
			t.Errorf("US changes %q to %q", text, got)
		}
	}
}
