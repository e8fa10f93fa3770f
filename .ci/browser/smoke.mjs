// Opens a browser build in headless Chromium and waits until it shows a picture.
//
//   node smoke.mjs PROGRAM.wasm PICTURE.png [ARGUMENT of the program …]
//
// Exit 0 when the page showed a picture and reported no error, 1 otherwise.
import { execFileSync } from "node:child_process";
import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { launch } from "./chromium.mjs";
import { serve } from "./server.mjs";

const [program, picture, ...args] = process.argv.slice(2);
if (!picture) {
  console.error("use: node smoke.mjs PROGRAM.wasm PICTURE.png [ARGUMENT ...]");
  process.exit(2);
}

const patience = 120; // seconds: a cold machine compiles the program first, with software graphics

// variety runs in a page of its own: how many colors a picture has, and the share of the commonest.
async function variety(data) {
  const image = await createImageBitmap(await (await fetch("data:image/png;base64," + data)).blob());
  const canvas = new OffscreenCanvas(image.width, image.height).getContext("2d");
  canvas.drawImage(image, 0, 0);
  const count = new Map();
  const pixels = new Uint32Array(canvas.getImageData(0, 0, image.width, image.height).data.buffer);
  for (const p of pixels) count.set(p, (count.get(p) ?? 0) + 1);
  return { colors: count.size, commonest: Math.max(...count.values()) / pixels.length };
}

const goroot = execFileSync("go", ["env", "GOROOT"], { encoding: "utf8" }).trim();
const server = await serve({
  "/": [fileURLToPath(new URL("index.html", import.meta.url)), "text/html"],
  "/wasm_exec.js": [join(goroot, "lib/wasm/wasm_exec.js"), "text/javascript"],
  "/program.wasm": [program, "application/wasm"],
});
const browser = await launch();
const errors = [];
try {
  const scales = await browser.page(() => {});
  let loaded;
  const load = new Promise(done => { loaded = done; });
  const page = await browser.page((method, params) => {
    if (method === "Page.loadEventFired") loaded();
    if (method === "Runtime.exceptionThrown") {
      const e = params.exceptionDetails;
      errors.push(e.exception?.description ?? e.text);
    }
    if (method === "Runtime.consoleAPICalled") {
      const line = params.args.map(a => a.value ?? a.description).join(" ");
      console.log("  page:", line);
      if (params.type === "error") errors.push(line);
    }
    if (method === "Inspector.targetCrashed") errors.push("the page crashed");
  });
  await page("Runtime.enable");
  await page("Page.enable");
  await page("Emulation.setDeviceMetricsOverride", { width: 1280, height: 720, deviceScaleFactor: 1, mobile: false });
  await page("Page.navigate", { url: server.url + "?" + args.map(a => "arg=" + encodeURIComponent(a)).join("&") });
  await load;

  let seen, shot;
  const shows = v => v && v.colors >= 8 && v.commonest < 0.995;
  const until = Date.now() + patience * 1000;
  do {
    await new Promise(r => setTimeout(r, 1000)); // a second more than the first picture: late errors count
    shot = (await page("Page.captureScreenshot", { format: "png" })).data;
    const told = await scales("Runtime.evaluate",
      { expression: `(${variety})("${shot}")`, awaitPromise: true, returnByValue: true });
    const before = shows(seen);
    seen = told.result.value;
    if (before && shows(seen)) break;
  } while (errors.length === 0 && Date.now() < until);

  await writeFile(picture, Buffer.from(shot, "base64"));
  if (!shows(seen)) errors.push(`no picture: ${JSON.stringify(seen)}`);
  console.log(`browser: ${seen?.colors} colors, the commonest on ${(100 * seen?.commonest).toFixed(1)} % of the page, kept as ${picture}`);
} catch (fault) {
  errors.push(fault.message);
} finally {
  await browser.close();
  server.close();
}
for (const e of errors) console.error("browser: " + e);
process.exitCode = errors.length ? 1 : 0;
