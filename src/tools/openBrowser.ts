import { spawn } from "node:child_process";

/** Shows an address in the user's browser, if there is a screen to show it on. Never fails. */
export function openBrowser(address: string): void {
  if (!hasScreen(process.platform, process.env)) return;
  const [command, ...args] = OPENERS[process.platform] ?? ["xdg-open"];
  const child = spawn(command, [...args, address], { stdio: "ignore", detached: true });
  // No browser to be found is no trouble: the address stands in the terminal.
  child.on("error", () => undefined);
  child.unref();
}

const OPENERS: Partial<Record<NodeJS.Platform, readonly [string, ...string[]]>> = {
  darwin: ["open"],
  win32: ["cmd", "/c", "start", ""],
};

/** Whether somebody sits in front of this computer's desktop: not in CI, not over a remote shell. */
export function hasScreen(
  platform: NodeJS.Platform,
  environment: Readonly<Record<string, string | undefined>>,
): boolean {
  if (environment.CI || environment.SSH_CONNECTION) return false;
  if (platform === "darwin" || platform === "win32") return true;
  return Boolean(environment.DISPLAY || environment.WAYLAND_DISPLAY);
}
