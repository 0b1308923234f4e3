import type { DocumentChange, DocumentSegment, PlanDocument } from "@formweek/application";
import { isoWeekday, localDayAt, localTextAt } from "@formweek/capacity-model";

/** Links of a late order's chain that are printed, the last ones. */
const LINKS_SHOWN = 12;
const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;

/** The plan as lines of text: a schedule per line, what is late or left out, and what it costs. */
export function planText(document: PlanDocument): readonly string[] {
  const clock = clockOf(document.plant.timeZone);
  return [
    `${document.plant.name}: ${document.summary.orders} orders on ${document.lines.length} lines, times in ${document.plant.timeZone}`,
    ...document.lines.flatMap((line) => lineText(document, line, clock)),
    "",
    ...summaryText(document, clock),
  ];
}

type Clock = (iso: string) => string;

/** "lot 2 of 3" behind the order's number where it is made in several. */
function lotText({ lots }: PlanDocument, orderId: string, lot: number): string {
  const count = lots.filter((each) => each.orderId === orderId).length;
  return count > 1 ? ` lot ${lot + 1} of ${count}` : "";
}

/** "Mon 30 Nov 06:00" would need a locale; weekday, month-day and time read the same everywhere. */
function clockOf(timeZone: string): Clock {
  return (iso) => {
    const at = Date.parse(iso) / 1000;
    const weekday = WEEKDAYS[isoWeekday(localDayAt(timeZone, at)) - 1] ?? "";
    const text = localTextAt(timeZone, at);
    return `${weekday} ${text.slice(5, 10)} ${text.slice(11, 16)}`;
  };
}

function lineText(
  document: PlanDocument,
  line: PlanDocument["lines"][number],
  clock: Clock,
): readonly string[] {
  const own = document.segments.filter((segment) => segment.lineId === line.id);
  const { runSeconds, changeSeconds, stopSeconds, idleSeconds } = line.utilisation;
  const open = runSeconds + changeSeconds + stopSeconds + idleSeconds;
  const share =
    open === 0
      ? "never open"
      : `${Math.round((runSeconds / open) * 100)} % run, ${Math.round((changeSeconds / open) * 100)} % change of its open time`;
  const work = own
    .filter((segment) => segment.kind !== "stop" || segment.reason !== "closed")
    .map((segment) => ({ start: segment.start, text: segmentText(document, segment, clock) }));
  const closures = line.closures.map(({ start, end, reason }) => ({
    start,
    text: `  ${clock(start)} – ${clock(end)}  closed  ${reason}`,
  }));
  const rows = [...work, ...closures]
    .sort((a, b) => Date.parse(a.start) - Date.parse(b.start))
    .map(({ text }) => text);
  return [
    "",
    `${line.name} (${line.id}): ${share}`,
    ...(work.length === 0 ? ["  nothing planned"] : []),
    ...rows,
  ];
}

const STOP_WORDS = {
  closed: "closed",
  operators: "too few operators",
  "warm-up": "warm-up",
  service: "mould service",
} as const;

function segmentText(document: PlanDocument, segment: DocumentSegment, clock: Clock): string {
  const when = `  ${clock(segment.start)} – ${clock(segment.end)}  `;
  switch (segment.kind) {
    case "run": {
      const mould =
        segment.mould === null ? "" : `, mould ${segment.mould.mouldId} copy ${segment.mould.copy}`;
      const late = segment.lateSeconds > 0 ? `  LATE ${hours(segment.lateSeconds)}` : "";
      return `${when}run     ${segment.orderId}${lotText(document, segment.orderId, segment.lot)}  ${segment.productName}, ${grouped(segment.pieces)} pieces${mould}, ${segment.sheetName}, due ${clock(segment.due)}${late}`;
    }
    case "change":
      return `${when}change  ${Math.round(segment.minutes)} min, ${segment.teamId ?? "no setters"}${segment.stripping ? ", mould taken out" : ""}: ${tasksText(segment)}`;
    case "stop":
      return `${when}stop    ${STOP_WORDS[segment.reason]}`;
  }
}

const tasksText = (change: DocumentChange): string =>
  change.tasks.map(({ name, minutes }) => `${name} ${Math.round(minutes)}`).join("; ") || "none";

function summaryText(document: PlanDocument, clock: Clock): readonly string[] {
  const { summary, objective, bound, plant } = document;
  const late = document.orders.filter(({ state }) => state === "late");
  const gap =
    bound === null
      ? []
      : [
          `No plan can cost less than ${money(bound.total)} ${plant.currency}; ${(bound.gap * 100).toFixed(1)} % of this plan's total is above that.`,
          ...(bound.parts === null
            ? []
            : [
                `No plan of these orders has less than ${(bound.parts.changeMinutes / 60).toFixed(1)} h of changes.`,
              ]),
        ];
  return [
    `${summary.onTime} on time, ${summary.late} late, ${summary.coveredByStock} covered by stock, ${summary.unplanned} not planned`,
    ...(summary.late === 0
      ? []
      : [`${summary.tardinessHours} h late in all, ${summary.worstLateHours} h at worst`]),
    `${summary.changes} changes in ${summary.changeHours} h (${summary.teamHours} h of setters); until the last run ends, lines run ${(summary.utilisation * 100).toFixed(1)} % of their open time`,
    ...late.flatMap((order) => [
      `late: ${order.orderId} ${order.productName}, due ${clock(order.due)}, ready ${clock(order.finish ?? order.due)}, ${hours(order.lateSeconds)} late`,
      ...whyText(document, order.orderId, clock),
    ]),
    ...document.unplanned.flatMap(({ orderId, reasons }) =>
      reasons
        .slice(0, 5)
        .map(
          ({ lineId, text }) => `not planned: ${orderId}${lineId === null ? "" : ` on ${lineId}`}: ${text}`,
        ),
    ),
    ...objective.terms
      .filter(({ cost }) => cost > 0)
      .map(
        ({ name, unit, amount, price, cost }) =>
          `${name}: ${amount.toFixed(1)} ${unit} × ${price} = ${money(cost)} ${plant.currency}`,
      ),
    `Total ${money(objective.total)} ${plant.currency}; seed ${document.seed}, ${grouped(document.steps)} steps, engine ${document.engineVersion}, inputs ${document.inputHash}`,
    ...gap,
  ];
}

/** The chain that holds a late order, one link a row; a long one is cut to its last links. */
function whyText(document: PlanDocument, orderId: string, clock: Clock): readonly string[] {
  const chain = document.late.find((late) => late.orderId === orderId);
  if (chain === undefined) return [];
  const left = chain.links.length - LINKS_SHOWN;
  return [
    `  because: ${clock(chain.since)}  ${chain.sinceText}`,
    ...(left > 0 ? [`           ${left} more links, in the plan file`] : []),
    ...chain.links.slice(-LINKS_SHOWN).map((link) => `           ${clock(link.from)}  ${link.text}`),
  ];
}

const grouped = (value: number): string => String(value).replace(/\B(?=(\d{3})+$)/g, ",");
const money = (value: number): string => value.toFixed(2);

function hours(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, "0")}`;
}
