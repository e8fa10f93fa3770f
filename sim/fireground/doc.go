// Package fireground holds the things on the ground that water runs through: hydrant, hose,
// appliances, nozzles. Each is one type in one file. People and procedure are elsewhere.
package fireground
