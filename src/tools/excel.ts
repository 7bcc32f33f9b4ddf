/**
 * `npm run excel`: serves dist/ over https to this computer and loads the add-in into Excel. Arguments go on to
 * office-addin-debugging; without any, it starts the desktop Excel.
 */
import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { createServer } from "node:https";
import { homedir } from "node:os";
import { join } from "node:path";
import sirv from "sirv";
import { buildIfStale } from "./dist";
import { DEVELOPMENT_BASE, DIST } from "./paths";

/** Both bring hundreds of packages that nobody else needs, so they run through npx, at these versions. */
const CERTIFICATES = "office-addin-dev-certs@3.0.0";
const DEBUGGING = "office-addin-debugging@7.0.0";

/** Where the certificates' tool puts what it makes. */
const FOLDER = join(homedir(), ".office-addin-dev-certs");

async function main(args: string[]): Promise<void> {
  await buildIfStale(["excel", "pane"], () => {
    console.log("Building the add-in …");
  });
  if ((await run(CERTIFICATES, ["install"])) !== 0) {
    throw new Error(
      "no certificate for https://localhost could be installed; Excel takes no other",
    );
  }
  await serveSecurely(Number(new URL(DEVELOPMENT_BASE).port));
  console.log(`The add-in is at ${DEVELOPMENT_BASE}`);
  const manifest = join(DIST, "manifest.xml");
  const target = args.length > 0 ? args : ["desktop"];
  if ((await run(DEBUGGING, ["start", manifest, ...target, "--no-debug"])) !== 0) {
    console.log(
      `Excel could not be started from here. In Excel on the web, choose Insert, Add-ins, Upload My Add-in, and give it ${manifest}`,
    );
  }
  console.log("Press Ctrl+C to stop.");
}

/** Runs a tool beside the server, and gives its exit status. */
function run(tool: string, args: string[]): Promise<number | null> {
  const shell = process.platform === "win32";
  const child = spawn("npx", ["-y", tool, ...args], { stdio: "inherit", shell });
  return new Promise((resolve, reject) => child.once("error", reject).once("exit", resolve));
}

function serveSecurely(port: number): Promise<void> {
  const read = (file: string) => readFileSync(join(FOLDER, file));
  const files = sirv(DIST, { dev: true, etag: true });
  const certificate = {
    ca: read("ca.crt"),
    cert: read("localhost.crt"),
    key: read("localhost.key"),
  };
  const server = createServer(certificate, (request, response) => {
    // Excel on the web fetches functions.json from its own origin.
    response.setHeader("Access-Control-Allow-Origin", "*");
    response.setHeader("X-Content-Type-Options", "nosniff");
    files(request, response, () => {
      response.statusCode = 404;
      response.end("Not found");
    });
  });
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      const taken = `port ${port} is taken; the manifest names it, so it must be free`;
      reject(error.code === "EADDRINUSE" ? new Error(taken) : error);
    });
    server.listen(port, "localhost", resolve);
  });
}

main(process.argv.slice(2)).catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
