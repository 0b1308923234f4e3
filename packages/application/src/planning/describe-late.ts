import {
  whyLate,
  type ChainLink,
  type ChainRoot,
  type Plan,
  type RootCause,
  type SetupState,
} from "@formweek/scheduler";
import type { Assembled } from "./assembled.ts";
import { isoInstant } from "./iso-instant.ts";
import { linkText, rootText } from "./late-text.ts";
import type { DocumentCause, DocumentLate } from "./plan-document.ts";
import { plantNames } from "./plant-names.ts";

/** Every late order with the chain that holds it, the worst first. */
export function describeLate(assembled: Assembled, plan: Plan): readonly DocumentLate[] {
  const names = plantNames(assembled);
  const setups = new Map(assembled.problem.setups.map((setup) => [setup.id, setup]));
  return whyLate(assembled.problem, plan).map(({ orderId, lateSeconds, root, links }) => ({
    orderId,
    lateSeconds,
    since: isoInstant(root.at),
    sinceText: rootText(root, names),
    root: rootOf(root),
    links: links.map((link) => ({
      kind: link.kind,
      from: isoInstant(link.from),
      to: isoInstant(link.to),
      lineId: "lineId" in link ? link.lineId : null,
      orderId: "orderId" in link ? link.orderId : null,
      text: linkText(link, link.to - link.from, names),
      cause: causeOf(link, setups),
    })),
  }));
}

function rootOf({ at: _at, ...root }: ChainRoot): RootCause {
  return root;
}

function causeOf(
  { from: _from, to: _to, ...cause }: ChainLink,
  setups: ReadonlyMap<string, SetupState>,
): DocumentCause {
  if (cause.kind !== "change") return cause;
  const { toSetupId, ...change } = cause;
  const setup = setups.get(toSetupId);
  return { ...change, mouldId: setup?.mouldId ?? null, sheetId: setup?.sheetId ?? null };
}
