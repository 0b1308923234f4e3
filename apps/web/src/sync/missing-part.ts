import { serverAnswers } from "./reach.ts";

/** A part of the page that is fetched when it is needed did not come. */
export class MissingPart extends Error {
  constructor(cause: unknown) {
    super("A part of the page could not be fetched.", { cause });
  }
}

/** Loads a part of the page. */
export async function fetchPart<Part>(load: () => Promise<Part>): Promise<Part> {
  try {
    return await load();
  } catch (cause) {
    throw new MissingPart(cause);
  }
}

const storeKey = "formweek.reloaded-for-part";
const reloadedFor = sessionStorage.getItem(storeKey);
sessionStorage.removeItem(storeKey);

/** True when this page was reloaded for a missing part at the very address that it is at. */
export function wasReloadedForPart(): boolean {
  return reloadedFor === window.location.pathname;
}

/** Loads the page anew at its address, which fetches the newest parts; false, and the page stays, while the server is gone. */
export async function reloadForPart(): Promise<boolean> {
  if (!(await serverAnswers())) return false;
  sessionStorage.setItem(storeKey, window.location.pathname);
  window.location.reload();
  return true;
}
