// Solves every layout of sim/flownet/testdata/layouts.json with EPANET and writes what it found beside
// it, as epanet.json. The Go tests read both and need no node.
//
//   cd .ci/epanet && npm ci && node solve.mjs
//
// Every loss is quadratic, R psi/gpm²: EPANET knows such a loss as a throttle valve with coefficient K,
// h = 0.02517 K Q²/D⁴ in ft and cfs (EPANET 2.2 user manual, minor losses). A nozzle is an emitter,
// Q = k √P. A pump is a curve through three points, which EPANET turns into A − B Q². A check valve is a
// pipe with status CV, so short and wide that it adds nothing that can be seen. An ideal relief valve is
// a pressure-sustaining valve.
import { readFileSync, writeFileSync } from "node:fs";
import { Project, Workspace, NodeProperty, LinkProperty } from "epanet-js";

const data = new URL("../../sim/flownet/testdata/", import.meta.url);
const psiPerFt = 0.4333; // EPANET's own
const gpmPerCfs = 448.831; // likewise
const diameterIn = 4; // of every throttle valve: only K/D⁴ matters

function coefficient(r) {
  const feet = (r / psiPerFt) * gpmPerCfs * gpmPerCfs;
  return (feet * (diameterIn / 12) ** 4) / 0.02517;
}

function input(layout) {
  const junctions = [], reservoirs = [], pumps = [], curves = [], valves = [], pipes = [], emitters = [], status = [];
  for (const [id, n] of Object.entries(layout.nodes)) {
    if (n.psi !== undefined) reservoirs.push(` ${id} ${(n.ft ?? 0) + n.psi / psiPerFt}`);
    else junctions.push(` ${id} ${n.ft ?? 0} 0`);
  }
  for (const n of layout.nozzles) emitters.push(` ${n.at} ${n.k}`);
  for (const l of layout.links) {
    if (l.pump) {
      const { a, b, speed } = l.pump;
      for (const q of [0, 1500, 2000]) curves.push(` C_${l.id} ${q} ${(a - b * q * q) / psiPerFt}`);
      pumps.push(` ${l.id} ${l.from} ${l.to} HEAD C_${l.id} SPEED ${speed}`);
    } else if (l.check) {
      const middle = `${l.id}_M`;
      junctions.push(` ${middle} ${layout.nodes[l.to].ft ?? 0} 0`);
      pipes.push(` ${l.id}_CV ${middle} ${l.to} 0.001 24 150 0 CV`);
      valves.push(` ${l.id} ${l.from} ${middle} ${diameterIn} TCV ${coefficient(l.r)} 0`);
    } else if (l.sustain) {
      const middle = `${l.id}_M`;
      junctions.push(` ${middle} ${layout.nodes[l.to].ft ?? 0} 0`);
      valves.push(` ${l.id} ${l.from} ${middle} ${diameterIn} PSV ${l.sustain} 0`);
      valves.push(` ${l.id}_BACK ${middle} ${l.to} ${diameterIn} TCV ${coefficient(1e-6)} 0`);
    } else {
      valves.push(` ${l.id} ${l.from} ${l.to} ${diameterIn} TCV ${coefficient(l.r)} 0`);
    }
    if (l.shut) status.push(` ${l.id} CLOSED`);
  }
  const part = (name, lines) => `[${name}]\n${lines.join("\n")}\n\n`;
  return `[TITLE]\n${layout.name}\n\n` + part("JUNCTIONS", junctions) + part("RESERVOIRS", reservoirs) +
    part("PIPES", pipes) + part("PUMPS", pumps) + part("CURVES", curves) + part("VALVES", valves) +
    part("EMITTERS", emitters) + part("STATUS", status) +
    part("OPTIONS", [" UNITS GPM", " HEADLOSS H-W", " PRESSURE PSI", " EMITTER EXPONENT 0.5", " SPECIFIC GRAVITY 1.0",
      " ACCURACY 1e-7", " TRIALS 500", " UNBALANCED STOP"]) + "[END]\n";
}

const workspace = new Workspace();
await workspace.loadModule();
const layouts = JSON.parse(readFileSync(new URL("layouts.json", data), "utf8"));
const results = [];
for (const layout of layouts) {
  workspace.writeFile("in.inp", input(layout));
  const model = new Project(workspace);
  model.open("in.inp", "out.rpt", "out.bin");
  model.solveH();
  const psi = {}, gpm = {};
  for (const [id, n] of Object.entries(layout.nodes)) {
    if (n.psi === undefined) psi[id] = model.getNodeValue(model.getNodeIndex(id), NodeProperty.Pressure);
  }
  for (const l of layout.links) gpm[l.id] = model.getLinkValue(model.getLinkIndex(l.id), LinkProperty.Flow);
  model.close();
  results.push({ name: layout.name, psi, gpm });
}
const version = workspace.version;
writeFileSync(new URL("epanet.json", data), JSON.stringify({ version, solved: results }, null, 1) + "\n");
console.log(`${results.length} layouts solved with EPANET ${version}`);
