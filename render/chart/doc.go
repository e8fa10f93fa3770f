// Package chart draws live plots for a class: readings against time, and the pump's curve with the
// point at which it works. Type is as large as its caller asks; colors stay distinct for color-blind
// eyes, and every line carries its name.
package chart
