package app

import (
	"steadyneedle/render/report"
)

// This file has what the evaluator does in the debrief of a rated attempt: waive findings for a reason,
// and sign.

// mayRule reports whether the evaluator may still rule on the attempt.
func (d *debrief) mayRule() bool {
	r := d.sheet.Ruling
	return d.attempt.Info().Rated && d.attempt.Over() && d.doubt == "" && (r == nil || r.SignedBy == "")
}

// waiveReasons are those that are chosen with one press.
var waiveReasons = []string{
	"The department does this otherwise.",
	"The evaluator had asked for it.",
	"Not the candidate's doing.",
}

// waive asks for a reason, and takes a finding off the score.
func (d *debrief) waive(a *App, f *report.Finding) {
	a.openWriting(&writing{
		title: "Waive a finding", about: []string{f.Title + ".", "The finding stays on the sheet, with your reason, and takes no points. Until you sign you can take it back."},
		ready: waiveReasons, word: "Waive it",
		take: func(reason string) error {
			if err := d.attempt.Waive(f.Rule, f.At, reason); err != nil {
				return err
			}
			d.ruled(a)
			return nil
		},
	})
}

// takeBack lets a finding count again.
func (d *debrief) takeBack(a *App, f *report.Finding) {
	if err := d.attempt.TakeBack(f.Rule, f.At); err != nil {
		a.say(sentence(err.Error()))
		return
	}
	d.ruled(a)
	a.redraw()
}

// sign asks for the evaluator's name; after it nothing changes.
func (d *debrief) sign(a *App) {
	passed, score := d.sheet.Stands()
	a.openWriting(&writing{
		title: "Sign the sheet", about: []string{
			"Write your name. You sign for: " + passedWord(passed) + " with " + points(score) + ". After that nothing can be waived or taken back.",
			"A score certifies nothing: department procedure and a qualified instructor come first."},
		word: "Sign it",
		take: func(name string) error {
			if err := d.attempt.Sign(name); err != nil {
				return err
			}
			d.ruled(a)
			return nil
		},
	})
}

// ruled keeps the ruling, and shows the sheet with it.
func (d *debrief) ruled(a *App) {
	d.sheet = d.attempt.Sheet()
	if a.opt.Store == nil {
		return
	}
	if err := a.opt.Store.Rule(d.attempt); err != nil {
		a.say(sentence(err.Error()))
	}
}
