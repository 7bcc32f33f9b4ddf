/** LibreOffice, which opens a workbook as somebody else's program would. */
import { execFileSync, spawnSync } from "node:child_process";
import { join } from "node:path";

/** Whether it can be asked here. Where `CI` is set it must be. */
export const hasLibreOffice = spawnSync("soffice", ["--version"]).status === 0;
if (!hasLibreOffice) {
  const trouble = "LibreOffice was not found, so nothing is opened in it";
  if (process.env.CI) throw new Error(trouble);
  process.stderr.write(`SKIPPED: ${trouble}\n`);
}

/** Has workbooks opened and saved in another format, or the same, into a folder. One start serves them all. */
export function convert(paths: readonly string[], format: string, folder: string): void {
  // A profile of its own: a second LibreOffice would hand its work to the first and end.
  const profile = `-env:UserInstallation=file://${join(folder, "profile")}`;
  const args = [profile, "--headless", "--convert-to", format, "--outdir", folder, ...paths];
  execFileSync("soffice", args, { stdio: "ignore", timeout: 120_000 });
}
