import { whyLate, type Plan } from "@formweek/scheduler";
import type { Assembled } from "./assembled.ts";
import { isoInstant } from "./iso-instant.ts";
import { linkText, rootText, type PlantNames } from "./late-text.ts";
import type { DocumentLate } from "./plan-document.ts";

function nameIn(records: readonly { readonly id: string; readonly name: string }[]): (id: string) => string {
  const names = new Map(records.map((record) => [record.id, record.name]));
  return (id) => names.get(id) ?? id;
}

/** Names of the plant's records; a set-up is named by its mould and sheet. */
function plantNames({ plant, problem }: Assembled): PlantNames {
  const mould = nameIn(plant.moulds);
  const sheet = nameIn(plant.sheets);
  const setups = new Map(problem.setups.map((setup) => [setup.id, setup]));
  return {
    line: nameIn(plant.lines),
    mould,
    sheet,
    team: nameIn(plant.setterTeams),
    setup: (id) => {
      const setup = setups.get(id);
      const parts = [
        setup?.mouldId === null || setup === undefined ? null : mould(setup.mouldId),
        setup?.sheetId === null || setup === undefined ? null : sheet(setup.sheetId),
      ].filter((part) => part !== null);
      return parts.length === 0 ? "no mould" : parts.join(", ");
    },
  };
}

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
