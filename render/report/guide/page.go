package guide

import "html/template"

var page = template.Must(template.New("guide").Parse(`<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Objective test guide</title>
<style>
body { font: 15px/1.45 system-ui, sans-serif; max-width: 68rem; margin: 2rem auto; padding: 0 1.2rem; color: #14181a; background: #fff }
h1 { margin: 0; font-size: 2rem } h2 { margin: 2.6rem 0 .6rem; padding-bottom: .2rem; border-bottom: 2px solid #14181a } h2::first-letter, td:first-child > a::first-letter { text-transform: uppercase } h3 { margin: 0; font-size: 1.05rem }
.under { color: #444c52; margin: .2rem 0 1.2rem }
.caution { border: 2px solid #8a5a00; border-radius: 8px; padding: .7rem 1rem; background: #fff7e6 }
.result { font-size: 1.4rem; font-weight: 700 }
.pass { color: #0b6b3a } .fail { color: #a3210f; font-weight: 700 }
table { border-collapse: collapse; width: 100%; margin: .6rem 0 1.4rem; font-size: .92rem }
th, td { text-align: left; vertical-align: top; padding: .25rem .7rem .25rem 0; border-bottom: 1px solid #ccd2d6 } th { color: #444c52; font-weight: 600; border-bottom-color: #6b747a }
td.n, th.n { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap }
td.w { white-space: nowrap }
td.bar { width: 124px; padding-right: 0 }
a { color: #0b4f7d }
.pair { display: grid; grid-template-columns: 1fr 1fr; gap: 0 3rem }
.record { border-left: 6px solid #0b6b3a; padding: .1rem 0 .3rem 1rem; margin: 1.5rem 0; break-inside: avoid } .record.failed { border-color: #a3210f }
.record p { margin: .15rem 0 .4rem } .id { font: .82rem ui-monospace, monospace; color: #444c52 }
dl { display: grid; grid-template-columns: 8.2rem 1fr; gap: .1rem 1rem; margin: .3rem 0 } dt { color: #444c52 } dd { margin: 0 }
svg { display: block; max-width: 100%; height: auto } .mini svg { display: inline-block; vertical-align: -2px } .plot { max-width: 44rem; margin: .5rem 0 0 }
li { margin: .3rem 0 }
@media print { body { font-size: 11px; max-width: none; margin: 0 } h2 { break-before: page } h2.flow { break-before: auto } a { color: inherit; text-decoration: none } }
</style>
<h1>Objective test guide</h1>
<p class="under">Steady Needle, fire-engine pump-panel training simulator{{if .Build}}, build {{.Build}}{{end}}; model number {{.Physics}}{{if .Made}}; made {{.Made}}{{end}}</p>
<p class="caution">{{.Caution}} These tests show that the model behaves as its sources say, within the tolerances stated. They do not qualify it, or anybody trained with it, for anything. Several of them do what must never be done on apparatus: a pump shut up until it boils, lines slammed shut, supplies drawn flat. Do not reproduce them.</p>
<p class="result {{if .Failed}}fail{{else}}pass{{end}}">{{.Passed}} of {{len .Results}} tests passed{{if .Failed}}, {{.Failed}} failed{{end}}</p>

<h2 class="flow" id="summary">Summary</h2>
<table><tr><th>Area</th><th class="n">Tests</th><th class="n">Passed</th><th class="n">Failed</th></tr>
{{range .Areas}}<tr><td><a href="#{{.Short}}">{{.Name}}</a></td><td class="n">{{len .Tests}}</td><td class="n">{{.Passed}}</td><td class="n{{if .Failed}} fail{{end}}">{{.Failed}}</td></tr>
{{end}}</table>
<div class="pair"><table><tr><th>What the expected values stand on</th><th class="n">Tests</th></tr>{{range .Marks}}<tr><td>{{.Name}}</td><td class="n">{{.Tests}}</td></tr>{{end}}</table>
<table><tr><th>Kind of tolerance</th><th class="n">Tests</th></tr>{{range .Tiers}}<tr><td>{{.Name}}</td><td class="n">{{.Tests}}</td></tr>{{end}}</table></div>
{{if .Failures}}<h3 class="fail">Failed</h3>
<ul>{{range .Failures}}<li><a href="#{{.ID}}">{{.Title}}</a>: measured {{.MeasuredText}} {{.Unit}}, expected {{.ExpectedText}} {{.Unit}}{{with .Problem}} ({{.}}){{end}}</li>{{end}}</ul>{{end}}

<h2 class="flow" id="reading">How to read it</h2>
<p>The machine is worked as a person would work it: throttle, valves and wheels are turned at a hand's speed until a needle shows what is asked. A steady value is read only from a steady machine: pressures, flow and speed stand still for 4 s before and 1 s after. A sweep is decided by its worst point.</p>
<table><tr><th>Tolerance</th><th>Width</th></tr>
<tr><td>numerical</td><td>10⁻⁴: another solution of the same equations; 4·10⁻⁵ against another program</td></tr>
<tr><td>engineering formula</td><td>2 %, or 1 psi, or 5 gpm, whichever is wider; less where the formula is exact</td></tr>
<tr><td>empirical</td><td>10 to 20 %, with the right trend</td></tr>
<tr><td>other model</td><td>8 %: 40 % of the widest empirical tolerance</td></tr>
<tr><td>stated with the value</td><td>the source of the value gives its width</td></tr>
<tr><td>limits</td><td>a standard or a habit gives bounds</td></tr></table>
<p>In each bar the frame is the tolerance and the mark is what was measured.</p>
{{range .Areas}}
<h2 id="{{.Short}}">{{.Name}}</h2>
<table><tr><th>Test</th><th class="n">Measured</th><th>Expected</th><th></th><th>In tolerance</th><th></th></tr>
{{range .Tests}}<tr><td><a href="#{{.ID}}">{{.Title}}</a></td><td class="n">{{.MeasuredText}}</td><td class="w">{{.ExpectedText}}</td><td class="w">{{.Unit}}</td><td class="bar">{{.Bar}}</td><td class="{{if .Pass}}pass{{else}}fail{{end}}">{{if .Pass}}passed{{else}}FAILED{{end}}</td></tr>
{{end}}</table>
{{range .Tests}}<section class="record{{if not .Pass}} failed{{end}}" id="{{.ID}}">
<h3>{{.Title}}</h3>
<p><span class="{{if .Pass}}pass{{else}}fail{{end}}">{{if .Pass}}passed{{else}}FAILED{{end}}</span> <span class="id">{{.ID}}</span></p>
<p>{{.Objective}}</p>
<dl><dt>Initial conditions</dt><dd>{{.Initial}}</dd><dt>Steps</dt><dd>{{.Steps}}</dd><dt>Compared</dt><dd>{{.Compared}}</dd>
<dt>Expected</dt><dd>{{.ExpectedText}} {{.Unit}} ({{.Tolerance.Tier}}{{if .Curve}}{{if .Curve.Judged}}, at the worst point{{end}}{{end}})</dd><dt>Measured</dt><dd>{{.MeasuredText}} {{.Unit}}{{with .Problem}}; {{.}}{{end}} <span class="mini">{{.Bar}}</span></dd><dt>Source</dt><dd>{{.Source}}</dd></dl>
{{with .Picture}}<div class="plot">{{.}}</div>{{end}}
</section>
{{end}}{{end}}
<h2 id="devices">What the tests can find</h2>
<p>A test that cannot fail shows nothing. With each of these effects left out of the model, the tests named fail.</p>
<table><tr><th>Effect</th><th>What it does</th><th>Tests that fail without it</th></tr>
{{range .Devices}}<tr><td>{{.Effect}}</td><td>{{.Shown}}</td><td>{{range $i, $id := .Fails}}{{if $i}}, {{end}}<a class="id" href="#{{$id}}">{{$id}}</a>{{end}}</td></tr>
{{end}}</table>
<h2 id="sources">Sources</h2>
<table><tr><th>Source</th><th>Founded</th><th class="n">Tests</th></tr>
{{range .Sources}}<tr><td>{{.Text}}</td><td>{{.Mark}}</td><td class="n">{{.Tests}}</td></tr>
{{end}}</table>
<h2 id="assumptions">Assumptions</h2>
<p>These are not measured. They are data or named constants of an invented apparatus, tuned for behavior.</p>
<table><tr><th>What</th><th>Value</th><th>Why</th></tr>
{{range .Assumptions}}<tr><td>{{.What}}</td><td>{{.Value}}</td><td>{{.Why}}</td></tr>
{{end}}</table>
<h2 id="unchecked">What cannot be checked</h2>
<ul>{{range .Unchecked}}<li>{{.}}</li>
{{end}}</ul>
<h2 class="flow" id="weak">Where the model is known to be weak</h2>
<ul>{{range .Weaknesses}}<li>{{.}}</li>
{{end}}</ul>
<p class="caution">{{.Caution}}</p>
</html>
`))
