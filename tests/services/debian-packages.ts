import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

/** A program the suites need, where Debian puts it, and the package that brings it. */
export interface NeededProgram {
  readonly debianPackage: string;
  readonly isPresent: () => boolean;
}

/** What an attempt to install came to: nothing was missing, all is there now, or why not. */
export type Provision =
  | { readonly kind: "present" }
  | { readonly kind: "installed"; readonly packages: readonly string[] }
  | { readonly kind: "refused"; readonly packages: readonly string[]; readonly why: string };

/**
 * Installs the Debian packages of the programs that are missing, when this process may (root, apt-get there).
 * Services are kept from starting by themselves (`RUNLEVEL=1`): the suites start their own, on free ports.
 */
export function provisionDebianPackages(programs: readonly NeededProgram[]): Provision {
  const packages = programs.filter((program) => !program.isPresent()).map((program) => program.debianPackage);
  if (packages.length === 0) return { kind: "present" };
  if (process.getuid?.() !== 0) return { kind: "refused", packages, why: "only root may install packages" };
  if (!existsSync("/usr/bin/apt-get")) return { kind: "refused", packages, why: "there is no apt-get here" };
  const install = ["install", "-y", "--no-install-recommends", ...packages];
  // The lists of a fresh image are empty or old: fetch them and ask once more before giving up.
  const done = aptGet(install) || (aptGet(["update"]) && aptGet(install));
  return done
    ? { kind: "installed", packages }
    : { kind: "refused", packages, why: "apt-get could not install them" };
}

function aptGet(args: readonly string[]): boolean {
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive", RUNLEVEL: "1" };
  const run = spawnSync("apt-get", ["-q", ...args], { env, stdio: ["ignore", "ignore", "inherit"] });
  return run.status === 0;
}
