package report

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"

	"steadyneedle/sim/attempt"
)

// CSV writes an attempt's series, ten times a second: one header row of NAME (UNIT), then a row a
// sample. What was not seen is left empty, as is the
// last column, whose name is the caution. No column lacks its unit; a position or a lamp has a 1.
func CSV(w io.Writer, a *attempt.Attempt) error {
	b := bufio.NewWriter(w)
	line := a.Drill.Setup.Ground.Discharge
	fmt.Fprint(b, "Time (s)")
	var columns [][]float64
	for _, c := range shown {
		v := channel(&a.Series, numbered(c.channel, line))
		if v == nil {
			continue
		}
		unit := c.unit
		if unit == "lamp" || unit == "open" {
			unit = "1"
		}
		if c.channel == "relief_wheel" {
			unit = "turns"
		}
		fmt.Fprintf(b, ",%s (%s)", numbered(c.name, line), unit)
		columns = append(columns, v)
	}
	fmt.Fprint(b, ",Caution: training aid only; an invented apparatus; certifies nothing (text)\n")
	for i, at := range a.Series.At {
		b.WriteString(strconv.FormatFloat(at.Seconds(), 'f', 1, 64))
		for _, v := range columns {
			b.WriteByte(',')
			if !math.IsNaN(v[i]) {
				b.WriteString(strconv.FormatFloat(math.Round(v[i]*1000)/1000, 'f', -1, 64))
			}
		}
		b.WriteString(",\n") // the caution's column is empty
	}
	return b.Flush()
}
