import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { hasScreen } from "../../src/tools/openBrowser";
import type { Serving } from "../../src/tools/serve";
import { serve } from "../../src/tools/serve";

const parent = mkdtempSync(join(tmpdir(), "serve-"));
const folder = join(parent, "dist");
const open: Serving[] = [];

beforeAll(() => {
  mkdirSync(folder);
  writeFileSync(join(folder, "index.html"), "<title>page</title>");
  writeFileSync(join(folder, ".built"), "hidden");
  writeFileSync(join(parent, "secret.txt"), "secret");
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

/** Asks for a path exactly as written; `fetch` would tidy it first. */
function ask(port: number, path: string): Promise<{ status?: number; body: string }> {
  return new Promise((resolve, reject) => {
    request({ host: "localhost", port, path, agent: false }, (response) => {
      let body = "";
      response.on("data", (chunk: Buffer) => (body += chunk.toString()));
      response.on("end", () => resolve({ status: response.statusCode, body }));
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
  ])("gives nothing out for %s", async (path) => {
    const { port } = await serveFrom(4330);
    const { status, body } = await ask(port, path);
    expect(status).toBe(404);
    expect(body).not.toContain("secret");
    expect(body).not.toContain("hidden");
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
