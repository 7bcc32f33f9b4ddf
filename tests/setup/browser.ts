import { chromium } from "playwright-core";
import type { TestProject } from "vitest/node";
import { DIST } from "../../src/tools/paths";
import { serve } from "../../src/tools/serve";
import { executablePath, launchOptions } from "../browser/chromium";
import { build } from "./build";

declare module "vitest" {
  interface ProvidedContext {
    /** Where the tests join the browser. */
    browser: string;
    /** Where the built pages are served. */
    home: string;
  }
}

/** What a test opens is soon closed again, before code that ran often is worth the work of making it faster. */
const options = { ...launchOptions, args: [...launchOptions.args, "--js-flags=--no-opt"] };

/** Builds what the tests in a browser read, serves it, and starts one browser for all of them. */
export default async function setup({ provide }: TestProject): Promise<() => Promise<void>> {
  await build(["excel", "pane", "workbook", "card"]);
  const serving = await serve(DIST, 3300);
  provide("home", serving.address);
  const server = executablePath === undefined ? undefined : await chromium.launchServer(options);
  provide("browser", server?.wsEndpoint() ?? "");
  return async () => {
    await server?.close();
    await serving.close();
  };
}
