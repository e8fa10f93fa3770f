// Package water holds what the model must know of liquid water by temperature alone: vapor pressure,
// density and heat capacity. Everything is SI, absolute temperature in kelvin.
//
// Each is a formula of products, divisions and square roots, so that it gives the same bits on every
// processor. Ice and steam are not here: a temperature outside MinK to MaxK is taken as the nearer one.
package water
