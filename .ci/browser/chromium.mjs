// Chromium without a window, driven over a pipe by the DevTools protocol. Debian's chromium and node
// are all it needs: nothing has to be fetched from a package registry.
import { spawn } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";

const flags = [
  "--headless=new", "--no-sandbox", "--remote-debugging-pipe", "--hide-scrollbars",
  "--use-gl=angle", "--use-angle=swiftshader", "--enable-unsafe-swiftshader", // WebGL without a graphics card
  "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
];

// launch starts the browser. page() opens a page; close() ends the browser and removes its profile.
export async function launch() {
  const profile = await mkdtemp(join(tmpdir(), "needle-browser-"));
  const browser = spawn(process.env.CHROMIUM ?? "chromium", [...flags, `--user-data-dir=${profile}`, "about:blank"],
    { stdio: ["ignore", "ignore", "ignore", "pipe", "pipe"] });
  const ended = new Promise(done => { browser.on("exit", done); browser.on("error", done); });
  const waiting = new Map();
  const listeners = new Map(); // by page
  let last = 0;

  let text = "";
  browser.stdio[4].setEncoding("utf8").on("data", chunk => {
    const messages = (text + chunk).split("\0");
    text = messages.pop();
    for (const message of messages.map(m => JSON.parse(m))) {
      if (!message.id) {
        listeners.get(message.sessionId)?.(message.method, message.params);
        continue;
      }
      const { resolve, reject } = waiting.get(message.id);
      waiting.delete(message.id);
      message.error ? reject(new Error(message.error.message)) : resolve(message.result);
    }
  });
  browser.stdio[3].on("error", () => {}); // a browser that is gone is told by ended
  ended.then(why => {
    for (const { reject } of waiting.values()) reject(new Error(`chromium ended: ${why}`));
  });

  const send = (method, params = {}, sessionId) => new Promise((resolve, reject) => {
    waiting.set(++last, { resolve, reject });
    browser.stdio[3].write(JSON.stringify({ id: last, method, params, sessionId }) + "\0");
  });

  return {
    // page opens an empty page. hear(method, params) gets its events; the result sends commands to it.
    async page(hear) {
      const { targetId } = await send("Target.createTarget", { url: "about:blank" });
      const { sessionId } = await send("Target.attachToTarget", { targetId, flatten: true });
      listeners.set(sessionId, hear);
      return (method, params) => send(method, params, sessionId);
    },
    async close() {
      browser.kill();
      await ended;
      await rm(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}
