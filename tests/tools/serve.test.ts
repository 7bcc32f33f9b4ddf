import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { type IncomingHttpHeaders, request, type RequestOptions } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { brotliDecompressSync } from "node:zlib";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { hasScreen } from "../../src/tools/openBrowser";
import type { Serving } from "../../src/tools/serve";
import { serve } from "../../src/tools/serve";

const parent = mkdtempSync(join(tmpdir(), "serve-"));
const folder = join(parent, "dist");
const open: Serving[] = [];
const script = "// a line of a script\n".repeat(500);

beforeAll(() => {
  mkdirSync(folder);
  writeFileSync(join(folder, "index.html"), "<title>page</title>");
  writeFileSync(join(folder, ".built"), "hidden");
  writeFileSync(join(parent, "secret.txt"), "secret");
  symlinkSync(join(parent, "secret.txt"), join(folder, "link.txt"));
  writeFileSync(join(folder, "long.js"), script);
});

afterEach(async () => {
  await Promise.all(open.splice(0).map((serving) => serving.close()));
});

afterAll(() => rmSync(parent, { recursive: true }));

async function serveFrom(port: number, onTaken?: (port: number) => void) {
  const serving = await serve(folder, port, onTaken);
  open.push(serving);
  return serving;
}

interface Answer {
  readonly status?: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

/** Asks for a path exactly as written; `fetch` would tidy it first. */
function ask(port: number, path: string, more: RequestOptions = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    request({ host: "localhost", port, path, agent: false, ...more }, (response) => {
      const { statusCode: status, headers } = response;
      const unpack = headers["content-encoding"] === "br" ? brotliDecompressSync : Buffer.from;
      const parts: Buffer[] = [];
      response.on("data", (chunk: Buffer) => parts.push(chunk));
      response.on("end", () => {
        const whole = Buffer.concat(parts);
        resolve({ status, headers, body: String(whole.length > 0 ? unpack(whole) : "") });
      });
    })
      .on("error", reject)
      .end();
  });
}

describe("the server of the built files", () => {
  it("serves the page at its address", async () => {
    const { address } = await serveFrom(4310);
    const response = await fetch(address);
    expect(await response.text()).toBe("<title>page</title>");
    expect(response.headers.get("content-type")).toMatch(/^text\/html/);
  });

  it("forbids the page to run or ask for anything from elsewhere", async () => {
    // A port of its own: fetch keeps a connection to the last server there, which is closed by now.
    const { address } = await serveFrom(4315);
    const policy = (await fetch(address)).headers.get("content-security-policy");
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self';");
    expect(policy).toContain("connect-src 'self';");
    expect(policy).toContain("frame-ancestors 'none'");
  });

  it("says which ports are taken and takes the next", async () => {
    const taken: number[] = [];
    const first = await serveFrom(4320);
    const second = await serveFrom(first.port);
    const third = await serveFrom(first.port, (port) => taken.push(port));
    expect([second.port, third.port]).toEqual([first.port + 1, first.port + 2]);
    expect(taken).toEqual([first.port, first.port + 1]);
    expect(third.address).toBe(`http://localhost:${third.port}/`);
  });

  it.each([
    "/../secret.txt",
    "/..%2fsecret.txt",
    "/%2e%2e/secret.txt",
    "/..%5csecret.txt",
    "/index.html/../../secret.txt",
    "/.built",
    "/nothing.html",
    "/link.txt",
    "/%00",
    "/%zz",
  ])("gives nothing out for %s", async (path) => {
    const { port } = await serveFrom(4330);
    const { status, body } = await ask(port, path);
    expect(status).toBe(404);
    expect(body).not.toContain("secret");
    expect(body).not.toContain("hidden");
  });

  it.each(["bytes=5-1", "bytes=99999-", "bytes=x-y", "bytes=-0", "lines=1-2"])(
    "has no part of a file at %s, and goes on",
    async (range) => {
      const { port } = await serveFrom(4340);
      const answer = await ask(port, "/long.js", { headers: { Range: range } });
      expect(answer.status).toBe(416);
      expect(answer.headers["content-range"]).toBe(`bytes */${script.length}`);
      const part = await ask(port, "/long.js", { headers: { Range: "bytes=3-8" } });
      expect([part.status, part.body]).toEqual([206, script.slice(3, 9)]);
    },
  );

  it.each(["POST", "PUT", "DELETE", "OPTIONS"])("does nothing for %s", async (method) => {
    const { port } = await serveFrom(4350);
    const { status, headers } = await ask(port, "/index.html", { method });
    expect([status, headers.allow]).toEqual([405, "GET, HEAD"]);
  });

  it("answers to this computer's own names only", async () => {
    const { port } = await serveFrom(4360);
    for (const Host of ["localhost", "127.0.0.1", "[::1]", `localhost:${port}`]) {
      expect((await ask(port, "/", { headers: { Host } })).status, Host).toBe(200);
    }
    for (const Host of ["coach.example", "localhost.coach.example", "10.0.0.1"]) {
      const { status, body } = await ask(port, "/", { headers: { Host } });
      expect(status, Host).toBe(403);
      expect(body).not.toContain("page");
    }
  });

  it("sends a file compressed to who takes it, and only once", async () => {
    const { port } = await serveFrom(4370);
    const headers = { "Accept-Encoding": "gzip, deflate, br" };
    const answer = await ask(port, "/long.js", { headers });
    expect(answer.body).toBe(script);
    expect(answer.headers).toMatchObject({
      "content-encoding": "br",
      "content-type": "text/javascript; charset=utf-8",
      vary: "Accept-Encoding",
    });
    expect(Number(answer.headers["content-length"])).toBeLessThan(script.length / 10);
    const again = await ask(port, "/long.js", {
      headers: { ...headers, "If-None-Match": answer.headers.etag },
    });
    expect([again.status, again.body]).toEqual([304, ""]);
    const plain = await ask(port, "/long.js");
    expect([plain.headers["content-encoding"], plain.body]).toEqual([undefined, script]);
  });
});

describe("the browser is opened", () => {
  it("on a desktop", () => {
    expect(hasScreen("darwin", {})).toBe(true);
    expect(hasScreen("win32", {})).toBe(true);
    expect(hasScreen("linux", { DISPLAY: ":0" })).toBe(true);
    expect(hasScreen("linux", { WAYLAND_DISPLAY: "wayland-0" })).toBe(true);
  });

  it("not without a screen, in CI or over a remote shell", () => {
    expect(hasScreen("linux", {})).toBe(false);
    expect(hasScreen("darwin", { CI: "true" })).toBe(false);
    expect(hasScreen("linux", { DISPLAY: ":10", SSH_CONNECTION: "10.0.0.1" })).toBe(false);
  });
});
