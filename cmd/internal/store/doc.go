// Package store keeps attempts: a folder for each, with plain files in it.
//
//	attempt.tape   the recording
//	sheet.json     the sheet: findings, steps, hints, score
//	frames.gz      key frames, so that the attempt opens at once; not in a browser
//	own.json       how the candidates marked themselves
//	journal.tape   the recording while the attempt runs
//
// A journal is on disk within a second of every action, so that a program that is killed loses nothing;
// one that was left behind is offered at the next start. Every other file is written beside its place,
// made durable, and renamed: it is there whole or not at all. In a browser the same files lie in the
// page's own storage.
package store
