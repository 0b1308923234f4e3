import type {
  ChangeTaskKind,
  Compared,
  LateCause,
  LateRoot,
  Rate,
  UnplannedCause,
} from "@formweek/contracts";
import type { causesText as english } from "../en/causes-text.ts";
import type { Naming } from "../naming.ts";

/** What the server reports of a plan, worded from its codes and figures. */
export const causesText: typeof english = {
  causes: {
    unplanned: ({ text, cause }, naming) => (cause === undefined ? text : (unplanned(cause, naming) ?? text)),
    misfit: ({ code, text, compared }, naming) =>
      compared === null ? text : (misfit(code, compared, naming) ?? text),
    link: ({ text, cause }, seconds, naming) => (cause === undefined ? text : link(cause, seconds, naming)),
    root: ({ sinceText, root: from }, naming) => (from === undefined ? sinceText : root(from, naming)),
    limit: (rate, naming) => limit(rate, naming) ?? rate.limit.text,
    task: ({ name, kind }) => (kind === undefined ? name : tasks[kind]),
  },
};

function unplanned(cause: UnplannedCause, naming: Naming): string | null {
  const { span } = naming;
  switch (cause.kind) {
    case "no line":
      return "Keine Linie kann ihn mit einem seiner Werkzeuge fertigen.";
    case "does not fit":
      return misfit(cause.check, cause.compared, naming);
    case "no mould copy":
      return `Vom Werkzeug ${naming.mould(cause.mouldId)} gibt es kein Exemplar.`;
    case "line open too short":
      return `Der Lauf dauert ${span(cause.runSeconds)}; vom frühesten Beginn bis zum Ende des Planungszeitraums ist die Linie ${span(cause.leftSeconds)} offen.`;
    case "operators too short":
      return `Der Lauf dauert ${span(cause.runSeconds)}; Bediener für die Linie sind ${span(cause.leftSeconds)} da.`;
    case "setters too short":
      return `Das Rüsten braucht ${span(cause.workSeconds)} Arbeit eines Rüstteams; so viel Zeit hat keins mehr.`;
    case "longer than horizon":
      return `Der Lauf dauert ${span(cause.runSeconds)}; der ganze Planungszeitraum hat ${span(cause.horizonSeconds)}.`;
    case "ends after horizon":
      return `Der Lauf von ${span(cause.runSeconds)} mit seinem Aufheizen würde nach dem Planungszeitraum enden.`;
    case "starts after horizon":
      return "Sein frühester Beginn liegt nach dem Planungszeitraum.";
    case "no time left":
      return `Der Lauf dauert ${span(cause.runSeconds)}; nach den hier geplanten Aufträgen bleiben ${span(cause.leftSeconds)}, ohne Rüsten gerechnet.`;
    case "starts too late":
      return tooLate[cause.where](span(cause.bySeconds));
    case "pinned too early":
      return `Er ist zu einem Beginn festgehalten, der ${span(cause.bySeconds)} vor dem hier möglichen liegt.`;
    case "pinned to closed time":
      return "Er ist zu einem Beginn festgehalten, zu dem die Linie geschlossen ist oder keine Bediener hat.";
    case "pinned start taken":
      return "Die Linie, ihr Werkzeug oder ein Rüstteam ist zum festgehaltenen Beginn von anderen Aufträgen belegt.";
    case "pinned to other line":
      return "Er ist auf einer Linie festgehalten, die ihn nicht fertigen kann.";
    case "sheet never arrives":
      return `Er braucht ${cause.kg} kg der Folie ${naming.sheet(cause.sheetId)}; so viel trifft im Planungszeitraum nie ein.`;
    case "sheet used up":
      return `Die vor ihm geplanten Aufträge lassen zu wenig von der Folie ${naming.sheet(cause.sheetId)} übrig.`;
    case "taken out":
      return "Er wurde von Hand aus dem Plan genommen.";
  }
}

const tooLate = {
  pinned: (by: string) =>
    `Er ist zu einem Beginn festgehalten, der ${by} nach seinem spätesten Beginn liegt.`,
  alone: (by: string) => `Auch ohne andere Aufträge begänne er ${by} nach seinem spätesten Beginn.`,
  "behind others": (by: string) =>
    `Hinter den hier geplanten Aufträgen begänne er ${by} nach seinem spätesten Beginn.`,
};

/** A fit check by its code; null: a code that is not known here. */
export function misfit(check: string, compared: Compared, naming: Naming): string | null {
  if ("unit" in compared) return figures(check, compared, naming);
  const { needed, has } = compared;
  const listed = (names: readonly string[]): string => (names.length === 0 ? "keins" : names.join(", "));
  switch (check) {
    case "polymer-on-line":
      return `Die Linie fährt ${needed} nicht; sie fährt ${listed(has)}.`;
    case "stacker-tooling":
      return `Die Linie nimmt das Stapelwerkzeug ${needed} nicht auf; sie nimmt ${listed(has)}.`;
    case "rim-rolling-unit":
      return "Der Rand wird gerollt, und die Linie hat keine Randrolle.";
    case "rim-tooling":
      return has.length === 0
        ? "Der Rand wird gerollt, und das Rollwerkzeug dazu fehlt."
        : `Die Linie nimmt das Rollwerkzeug ${needed} nicht auf; sie nimmt ${listed(has)}.`;
    case "approval":
      return `Das Werkzeug ist für ${naming.line(needed)} nicht freigegeben; freigegeben ist es für ${listed(has.map(naming.line))}.`;
    case "product-mould":
      return "Der Artikel wird nicht mit diesem Werkzeug gefertigt.";
    case "product-insert":
      return `Der Artikel braucht den Einsatz ${needed}, den das Werkzeug nicht hat.`;
    case "product-sheet":
      return "Der Artikel wird aus einer anderen Folie gefertigt.";
    case "sheet-polymer":
      return `Die Folie ist ${listed(has)}, die Stoffdaten sind die von ${needed}.`;
    default:
      return null;
  }
}

const measured: Readonly<Record<string, string>> = {
  "mould-length": "Werkzeuglänge in Laufrichtung",
  "mould-width": "Werkzeugbreite quer zur Linie",
  depth: "Formtiefe",
  "sheet-thickness-least": "Foliendicke",
  "sheet-thickness-most": "Foliendicke",
  "sheet-width-least": "Folienbreite auf der Linie",
  "sheet-width-most": "Folienbreite auf der Linie",
  "sheet-covers-mould": "Folienbreite über Werkzeug und Kettenabstand",
  "index-in-oven": "Vorschub gegen beheizte Länge",
  "trim-force": "Stanzkraft",
  "forming-air-force": "Kraft der Formluft auf das Werkzeug",
  "forming-air-pressure": "Druck der Formluft",
  "mould-mass": "Werkzeugmasse am Ladegerät",
};

const leastChecks = ["sheet-thickness-least", "sheet-width-least", "sheet-covers-mould"];

function figures(
  check: string,
  { needed, has, unit }: Extract<Compared, { readonly unit: string }>,
  { figure }: Naming,
): string | null {
  const what = measured[check];
  if (what === undefined) return null;
  const [limit, side] = leastChecks.includes(check) ? ["mindestens", "zu wenig"] : ["höchstens", "zu viel"];
  const gap = figure(Math.abs(needed - has));
  return `${what}: ${figure(needed)} ${unit}, zulässig ${limit} ${figure(has)} ${unit}; ${gap} ${unit} ${side}.`;
}

function link(cause: LateCause, seconds: number, naming: Naming): string {
  const { line, mould, span } = naming;
  switch (cause.kind) {
    case "conditioning":
      return `${cause.orderId} ruht ${span(seconds)}`;
    case "run": {
      const stops = [
        ...(cause.closedSeconds > 0 ? [`${span(cause.closedSeconds)} geschlossen`] : []),
        ...(cause.operatorSeconds > 0 ? [`${span(cause.operatorSeconds)} ohne Bediener`] : []),
        ...(cause.warmUpSeconds > 0 ? [`${span(cause.warmUpSeconds)} Aufheizen`] : []),
      ];
      return `${line(cause.lineId)} fertigt ${cause.orderId}: ${[`${span(cause.workSeconds)} Lauf`, ...stops].join(", ")}`;
    }
    case "change": {
      const setup = [
        ...(cause.mouldId === null ? [] : [mould(cause.mouldId)]),
        ...(cause.sheetId === null ? [] : [naming.sheet(cause.sheetId)]),
      ];
      const onto = setup.length === 0 ? "abgerüstet" : `auf ${setup.join(", ")} gerüstet`;
      const team = cause.teamId === null ? "" : ` von ${naming.team(cause.teamId)}`;
      const pause = seconds - cause.workSeconds;
      const pauses = pause >= 60 ? `, ${span(pause)} Unterbrechung` : "";
      return `${line(cause.lineId)} wird${team} ${onto}: ${span(cause.workSeconds)} Arbeit${pauses}`;
    }
    case "mould service":
      return `${mould(cause.mouldId)} wird auf ${line(cause.lineId)} vor ${cause.orderId} gewartet: ${span(seconds)}`;
    case "carrying":
      return `${mould(cause.mouldId)} wird zu ${line(cause.lineId)} gebracht: ${span(seconds)}`;
    case "line closed":
      return `${line(cause.lineId)} ist ${span(seconds)} geschlossen`;
    case "no operators":
      return `${line(cause.lineId)} wartet ${span(seconds)} auf Bediener`;
    case "setters off":
      return `${line(cause.lineId)} wartet ${span(seconds)}, bis Einrichter in der Schicht sind`;
    case "other work first":
      return `andere Arbeit geht auf ${line(cause.lineId)} vor: ${span(seconds)}`;
  }
}

function root(from: LateRoot, naming: Naming): string {
  switch (from.kind) {
    case "line free":
      return `${naming.line(from.lineId)} ist ab dann frei`;
    case "earliest start":
      return `${from.orderId} darf nicht früher beginnen`;
    case "pinned start":
      return `${from.orderId} ist zu diesem Beginn festgehalten`;
    case "sheet arrival":
      return `${naming.sheet(from.sheetId)} trifft ein`;
    case "mould arrives":
      return `das Werkzeug für ${naming.line(from.lineId)} trifft ein`;
    case "mould out of service":
      return `${naming.mould(from.mouldId)} ist wieder im Einsatz`;
  }
}

/** What holds a rate; null: a limit that is not known here. */
function limit({ limit: { name }, parts, cyclesPerMin }: Rate, { figure }: Naming): string | null {
  const seconds = (part: string): string => `${figure(Math.round((parts[part] ?? 0) * 100) / 100)} s`;
  const most = `${figure(Math.round(cyclesPerMin * 10) / 10)} Takte/min`;
  switch (name) {
    case "station":
      return `Das Werkzeug ist ${seconds("closedSeconds")} geschlossen und ${seconds("openSeconds")} offen.`;
    case "oven":
      return `Die Folie braucht ${seconds("heatingSeconds")} Wärme über ${figure(parts["ovenPositions"] ?? 1)} Heizpositionen.`;
    case "sheet-flow":
      return `Der Extruder gibt Folie für höchstens ${most}.`;
    case "stacker":
      return `Der Stapler schafft höchstens ${most}.`;
    case "rim-rolling":
      return `Das Randrollen schafft höchstens ${most}.`;
    case "line-dry-cycle":
      return `Die Linie schafft ohne Folie höchstens ${most}.`;
    case "mould-cycle":
      return `Das Werkzeug schafft höchstens ${most}.`;
    case "proven-rate":
      return "In der Fertigung gemessen; das gilt vor dem berechneten Takt.";
    default:
      return null;
  }
}

const tasks: Readonly<Record<ChangeTaskKind, string>> = {
  "mould out": "Werkzeug ausbauen",
  "mould in": "Werkzeug einbauen",
  "insert out": "Einsätze ausbauen",
  "insert in": "Einsätze einbauen",
  "stacker tooling": "Stapelwerkzeug rüsten",
  "rim tooling": "Rollwerkzeug rüsten",
  "packing format": "Packformat einstellen",
  "trim set": "Stanzung einstellen",
  splice: "Folie anspleißen",
  "sheet width": "Kettenführung auf Folienbreite stellen",
  "sheet thickness": "Auf Foliendicke einstellen",
  polymer: "Kunststoff umstellen",
  colour: "Farbe freifahren",
  "oven re-soak": "Heizung auf Temperatur bringen",
  "mould heat-up": "Werkzeug aufheizen",
  "first-piece check": "Erstteile prüfen",
};
