import { existsSync } from "node:fs";

/** The browser the screens are tried in, or none: Debian's Chromium; nothing is downloaded. */
export function chromiumProgram(): string | undefined {
  return ["/usr/bin/chromium", "/usr/bin/chromium-browser"].find((path) => existsSync(path));
}

/** Flags that keep Chromium quiet and off the network, and let it run as root in a container. */
export const CHROMIUM_FLAGS: readonly string[] = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
