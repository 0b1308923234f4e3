import type { OrderTerms } from "@formweek/contracts";
import { draftOf, readDraft, type OrderDraft } from "./order-draft.ts";
import type { OrderField } from "./order-terms.ts";
import { daysLater, instantOfWallText, wallText } from "./wall-text.ts";
import type { ZoneClock } from "./zone-clock.ts";

/** A new order as it stands in a form: `dueAt` is a day, and its time may be left out. */
export interface NewOrderDraft extends OrderDraft {
  readonly id: string;
  readonly dueTime: string;
}

export type NewOrderField = OrderField | "id" | "dueTime";

/** Why a field cannot be taken: what is in it cannot be read, or an order has this number already. */
export interface NewOrderFault {
  readonly field: NewOrderField;
  readonly kind: "unreadable" | "taken";
}

export type NewOrderReading =
  | { readonly kind: "read"; readonly terms: OrderTerms }
  | { readonly kind: "faulty"; readonly faults: readonly NewOrderFault[] };

/** A product to choose from: id and name. */
export type NamedProduct = readonly [id: string, name: string];

interface KnownToPlant {
  readonly clock: ZoneClock;
  readonly products: readonly NamedProduct[];
  readonly isTaken: (id: string) => boolean;
}

const noCustomer = "—";
const longestId = 64;

/** What is not written has the values that an import gives it. */
const unwritten: OrderTerms = {
  id: "",
  customer: noCustomer,
  productId: "",
  pieces: 0,
  dueAt: "1970-01-01T00:00:00Z",
  earliestStartAt: null,
  weight: 1,
  kind: "firm",
  underTolerance: 0,
  overTolerance: 0,
  partsAllowed: false,
};

/** An empty form. */
export function emptyOrder(clock: ZoneClock): NewOrderDraft {
  const blank = { customer: "", productId: "", pieces: "", dueAt: "" };
  return { ...draftOf(unwritten, clock), ...blank, id: "", dueTime: "" };
}

/** What a form says, by the rules of the imports: a due day without a time means its end, no customer is "—". */
export function readNewOrder(
  draft: NewOrderDraft,
  { clock, products, isTaken }: KnownToPlant,
): NewOrderReading {
  const faults: NewOrderFault[] = [];
  const id = draft.id.trim();
  if (id === "" || id.length > longestId) faults.push({ field: "id", kind: "unreadable" });
  else if (isTaken(id)) faults.push({ field: "id", kind: "taken" });
  const productId = productWritten(draft.productId, products);
  const customer = draft.customer.trim() === "" ? noCustomer : draft.customer;
  const dueAt = dueText(draft, clock);
  const written = { ...draft, customer, productId: productId ?? "", dueAt };
  const reading = readDraft({ ...unwritten, id }, written, clock, {});
  if (reading.kind === "faulty")
    faults.push(...reading.fields.map((field) => ({ field, kind: "unreadable" }) as const));
  return reading.kind === "faulty" || faults.length > 0
    ? { kind: "faulty", faults }
    : { kind: "read", terms: reading.terms };
}

/** Whether an order that is due then would be late before a plan begins; false where nothing readable is written. */
export function isDueBeforePlanning(
  draft: Pick<NewOrderDraft, "dueAt" | "dueTime">,
  clock: ZoneClock,
  planStart: number,
): boolean {
  if (draft.dueAt === "") return false;
  const dueAt = instantOfWallText(clock, dueText(draft, clock));
  return dueAt !== null && dueAt < planStart;
}

/** Day and time as one; midnight after a day without a time. */
function dueText(
  { dueAt: day, dueTime }: Pick<NewOrderDraft, "dueAt" | "dueTime">,
  clock: ZoneClock,
): string {
  if (dueTime !== "") return `${day}T${dueTime}`;
  const midnight = instantOfWallText(clock, `${day}T00:00`);
  return midnight === null ? "" : wallText(clock, daysLater(clock, midnight, 1));
}

/**
 * Product by its id or name as they stand, else with spaces, punctuation, accents and case apart; null where none or two
 * are meant.
 */
function productWritten(text: string, products: readonly NamedProduct[]): string | null {
  const written = text.trim();
  if (products.some(([id]) => id === written)) return written;
  const loose = looseName(written);
  if (loose === "") return null;
  const meant = products.filter(([id, name]) => looseName(id) === loose || looseName(name) === loose);
  return meant.length === 1 ? (meant[0]?.[0] ?? null) : null;
}

function looseName(text: string): string {
  return text
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, "");
}
