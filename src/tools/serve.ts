import type { Server } from "node:http";
import { createServer } from "node:http";
import sirv from "sirv";
import { CONTENT_SECURITY_POLICY } from "../hosts/page/policy";
import { serveCompressed } from "./serveCompressed";
import { refuse } from "./serveRefusals";

/** A running server and where it answers. */
export interface Serving {
  readonly address: string;
  readonly port: number;
  /** Has some files compressed before anybody asks for them, so that a first visit need not wait for it. */
  compressAhead(names: readonly string[]): Promise<void>;
  close(): Promise<void>;
}

/**
 * Serves a folder to this computer, and to no other. Starts at `port` and tries the next ones while
 * they are taken, telling `onTaken` of each.
 */
export async function serve(
  folder: string,
  port: number,
  onTaken: (port: number) => void = () => undefined,
): Promise<Serving> {
  const files = sirv(folder, { dev: true, etag: true, dotfiles: false });
  const compressed = serveCompressed(folder);
  const server = createServer((request, response) => {
    response.setHeader("Content-Security-Policy", policyFor(request.url ?? ""));
    response.setHeader("X-Content-Type-Options", "nosniff");
    response.setHeader("Referrer-Policy", "no-referrer");
    const refusal = refuse(folder, request);
    const notFound = () => {
      response.statusCode = 404;
      response.end("Not found");
    };
    if (refusal) {
      response.writeHead(refusal.status, refusal.headers);
      response.end(refusal.reason);
    } else if (!compressed.answer(request, response)) files(request, response, notFound);
  });
  const chosen = await listenFrom(server, port, onTaken);
  return {
    address: `http://localhost:${chosen}/`,
    port: chosen,
    compressAhead: compressed.ahead,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

/** The card's page names its own script by hash in its own, narrower policy; two policies would both have to hold. */
function policyFor(url: string): string {
  const framing = "frame-ancestors 'none'";
  return url.startsWith("/card/") ? framing : `${CONTENT_SECURITY_POLICY}; ${framing}`;
}

/** How many ports to try before giving up. */
const ATTEMPTS = 50;

async function listenFrom(
  server: Server,
  first: number,
  onTaken: (port: number) => void,
): Promise<number> {
  for (let port = first; port < first + ATTEMPTS; port++) {
    if (await listen(server, port)) return port;
    onTaken(port);
  }
  throw new Error(`ports ${first} to ${first + ATTEMPTS - 1} are all taken`);
}

/** Whether the port was free; any other trouble is thrown. */
function listen(server: Server, port: number): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const onError = (error: NodeJS.ErrnoException) => {
      server.off("listening", onListening);
      if (error.code === "EADDRINUSE") resolve(false);
      else reject(error);
    };
    const onListening = () => {
      server.off("error", onError);
      resolve(true);
    };
    server.once("error", onError);
    server.once("listening", onListening);
    server.listen(port, "localhost");
  });
}
