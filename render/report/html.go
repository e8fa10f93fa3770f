package report

import (
	"html/template"
	"io"

	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// HTML writes a sheet as one page that needs nothing else.
func HTML(w io.Writer, s *Sheet) error {
	return page.Execute(w, struct {
		*Sheet
		Plot        template.HTML
		Clock       string
		SumsCaution string
	}{s, plot(s), unit.Clock(s.ClockS), SumsCaution})
}

var page = template.Must(template.New("sheet").Funcs(template.FuncMap{
	"clock":  func(f Finding) string { return unit.Clock(f.At.Seconds()) },
	"waived": func(s *Sheet, f Finding) string { return s.WaivedFor(&f) },
	"at":     func(at world.Tick) string { return unit.Clock(at.Seconds()) },
	"nth":    func(i int) int { return i + 1 },
}).Parse(`<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{{.Title}}: sheet</title>
<style>
body { font: 16px/1.45 system-ui, sans-serif; max-width: 60rem; margin: 2rem auto; padding: 0 1rem; color: #14181a; background: #fff }
h1 { margin: 0 } h2 { margin: 2rem 0 .5rem }
.under { color: #444c52; margin: .2rem 0 1rem }
.caution { border: 2px solid #8a5a00; border-radius: 8px; padding: .7rem 1rem; background: #fff7e6 }
.result { font-size: 1.4rem; font-weight: 700 }
.pass { color: #0b6b3a } .fail { color: #a3210f }
.finding { border-left: 6px solid #6b747a; padding: .3rem 0 .3rem 1rem; margin: 1rem 0; break-inside: avoid }
.error { border-color: #a86a00 } .unsafe { border-color: #a3210f }
.finding h3 { margin: 0 } .finding p { margin: .2rem 0 }
dl { display: grid; grid-template-columns: 9rem 1fr; gap: .1rem 1rem; margin: .4rem 0 } dt { color: #444c52 } dd { margin: 0 }
table { border-collapse: collapse; margin: .5rem 0 } th, td { text-align: left; padding: .15rem .8rem .15rem 0; border-bottom: 1px solid #dde2e5; vertical-align: top }
svg { width: 100%; height: auto }
.sign { margin-top: 3rem; display: grid; grid-template-columns: 1fr 1fr; gap: 3rem } .sign div { border-top: 1px solid #14181a; padding-top: .3rem }
</style>
<h1>{{.Title}}</h1>
<p class="under">{{.Under}}</p>
<p class="caution">{{.Caution}}</p>
<p class="result {{if .Passed}}pass{{else}}fail{{end}}">{{.Verdict}}: {{printf "%.0f" .Score}} of {{printf "%.0f" .Full}} points ({{printf "%.0f" .Pass}} to pass), clock {{.Clock}}</p>
{{with .Ruling}}<p class="result {{if .Passed}}pass{{else}}fail{{end}}">{{.Words}}</p>
{{end}}<h2>Timeline</h2>
{{.Plot}}
<h2>Findings</h2>
{{range .Findings}}<section class="finding {{.Severity}}">
<h3>{{.Title}}</h3>
<p>{{.Severity}}, {{clock .}} from the start, {{.Place}}</p>
<dl>{{if .Expected}}<dt>Expected</dt><dd>{{.Expected}}</dd>{{end}}{{if .Measured}}<dt>Found</dt><dd>{{.Measured}}</dd>{{end}}{{if .Why}}<dt>Why it counts</dt><dd>{{.Why}}</dd>{{end}}{{range .Follows}}<dt>Came of it</dt><dd>{{.}}</dd>{{end}}{{with waived $.Sheet .}}<dt>Waived</dt><dd>{{.}}</dd>{{end}}</dl>
</section>
{{else}}<p>None.</p>
{{end}}{{with .Sums}}<h2>Calculation</h2>
<table><tr><th>Term</th><th>Yours</th><th>Right</th><th>Working</th></tr>
{{range .Lines}}<tr><td>{{.Title}}</td><td class="{{if .OK}}pass{{else if .Given}}fail{{end}}">{{if .Given}}{{.Number .Answer}}{{else}}not written{{end}}</td><td>{{.Number .Right}}</td><td>{{.Working}}</td></tr>
{{end}}{{with .Total}}<tr><td><b>{{.Title}}</b></td><td class="{{if .OK}}pass{{else if .Given}}fail{{end}}">{{if .Given}}{{.Number .Answer}}{{else}}not written{{end}}</td><td>{{.Number .Right}}</td>{{end}}<td>rounded: {{printf "%.0f" .Rounded}} {{.Unit}}{{with .OverLimit .Rounded}}; {{.}}{{end}}{{if .Said}}; stated: {{printf "%.0f" .Stated}} {{.Unit}}{{with .OverLimit .Stated}}; {{.}}{{end}}{{end}}</td></tr></table>
{{$unit := .Unit}}{{range .Proofs}}<p>{{.Words $unit}}</p>
{{end}}<p class="caution">{{$.SumsCaution}}</p>
{{end}}{{if .Steps}}<h2>Steps</h2>
<table><tr><th></th><th>Step</th><th>Done</th><th></th></tr>
{{range $i, $s := .Steps}}<tr><td>{{nth $i}}</td><td>{{$s.Text}}</td><td>{{if $s.Done}}{{at $s.At}}{{end}}</td><td>{{$s.Became}}</td></tr>
{{end}}</table>
{{end}}{{if .Hints}}<h2>Help</h2>
<p>{{if .Help}}Help in this attempt: {{.Help}}.{{end}} {{len .Hints}} times something was said.</p>
<table>{{range .Hints}}<tr><td>{{at .At}}</td><td>{{.Cause}}</td><td>{{.Text}}</td></tr>
{{end}}</table>
{{end}}{{if .Own}}<h2>Own marks</h2>
<table><tr><th>Part</th><th>Candidate</th><th>Judge</th></tr>{{range .Phases}}<tr><td>{{.}}</td><td>{{index $.Own.Phases .}}</td><td>{{$.Grade .}}</td></tr>{{end}}</table>
{{end}}<h2>Attempt</h2>
<dl>{{range .Facts}}<dt>{{index . 0}}</dt><dd>{{index . 1}}</dd>{{end}}</dl>
<div class="sign"><div>Candidate</div><div>Evaluator{{with .Ruling}}{{with .SignedBy}}: {{.}}{{end}}{{end}}</div></div>
</html>
`))
