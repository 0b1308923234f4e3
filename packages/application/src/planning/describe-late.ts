import { whyLate, type Plan } from "@formweek/scheduler";
import type { Assembled } from "./assembled.ts";
import { isoInstant } from "./iso-instant.ts";
import { linkText, rootText } from "./late-text.ts";
import type { DocumentLate } from "./plan-document.ts";
import { plantNames } from "./plant-names.ts";

/** Every late order with the chain that holds it, the worst first. */
export function describeLate(assembled: Assembled, plan: Plan): readonly DocumentLate[] {
  const names = plantNames(assembled);
  return whyLate(assembled.problem, plan).map(({ orderId, lateSeconds, root, links }) => ({
    orderId,
    lateSeconds,
    since: isoInstant(root.at),
    sinceText: rootText(root, names),
    links: links.map((link) => ({
      kind: link.kind,
      from: isoInstant(link.from),
      to: isoInstant(link.to),
      lineId: "lineId" in link ? link.lineId : null,
      orderId: "orderId" in link ? link.orderId : null,
      text: linkText(link, link.to - link.from, names),
    })),
  }));
}
