// A web server for three files, on loopback and a free port.
import { createServer } from "node:http";
import { readFile } from "node:fs/promises";

// serve offers files, a map of URL path to [file, media type]; it resolves to { url, close }.
export async function serve(files) {
  const server = createServer(async (request, answer) => {
    const known = files[new URL(request.url, "http://localhost").pathname];
    if (!known) {
      answer.writeHead(request.url === "/favicon.ico" ? 204 : 404).end();
      return;
    }
    answer.writeHead(200, { "Content-Type": known[1] }).end(await readFile(known[0]));
  });
  await new Promise(ready => server.listen(0, "127.0.0.1", ready));
  return { url: `http://127.0.0.1:${server.address().port}/`, close: () => server.close() };
}
