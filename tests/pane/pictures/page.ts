import { build } from "esbuild";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { ROOT } from "../../../src/tools/paths";
import type * as pictures from "../../../src/pane/pictures";
import { only } from "../../present";

declare global {
  interface Window {
    pictures: typeof pictures;
  }
}

/** A page with the pictures in it, under the policy of the strictest page that shows them. */
export async function openPage(browser: Browser, complaints: string[]): Promise<Page> {
  const bundle = await build({
    entryPoints: [join(ROOT, "src", "pane", "pictures", "index.ts")],
    bundle: true,
    write: false,
    format: "iife",
    globalName: "pictures",
    target: "es2020",
  });
  const page = await browser.newPage({ viewport: { width: 760, height: 900 } });
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  await page.setContent(`<!doctype html><html lang="en"><head>
    <meta http-equiv="Content-Security-Policy"
      content="default-src 'none'; script-src 'unsafe-inline'; style-src 'self'; img-src 'self' data:">
    <script>${only(bundle.outputFiles).text.replaceAll("</script", "<\\/script")}</script>
    </head><body></body></html>`);
  return page;
}

export interface Look {
  readonly width: number;
  readonly units?: string;
  readonly dark?: boolean;
}

/** Draws a picture as the only thing on the page, and gives back what it says, or why it is not there. */
export function drawOn(page: Page, id: string, values: unknown[][], look: Look): Promise<string> {
  return page.evaluate(
    ([wanted, cells, options]) => {
      const { pictures, isProblem } = window.pictures;
      const picture = pictures.find((one) => one.id === wanted)!;
      const data = picture.read(cells);
      if (isProblem(data)) return data.problem;
      const svg = picture.draw(data, { ...options, document });
      document.body.replaceChildren(svg);
      return picture.alt(data);
    },
    [id, values, look] as const,
  );
}
