import { type OpenDesk, promiseTogether } from "@formweek/scheduler";
import { problemFaulty } from "../jobs/solve-refusals.ts";
import type { FieldFault } from "../errors.ts";
import { sharesByOrder } from "../planning/planning-snapshot.ts";
import type { Clock } from "../ports/clock.ts";
import { type Result, ok, refused } from "../result.ts";
import { type AskedJob, answerOf, asked, askedFrom } from "./answer-enquiry.ts";
import { inSlices, pause } from "./in-slices.ts";
import type { AnsweredEnquiry, PromiseBase } from "./promise-answer.ts";
import { type ListedEnquiry, badRows } from "./read-enquiries.ts";
import { type StandingDesk, baseOf } from "./standing-desk.ts";
import { orderOf } from "./understand.ts";

/** How enquiries stand to each other: as if alone, each beside those before it, or in the sequence that serves them best. */
export type BatchMode = "each alone" | "in turn" | "together";

export interface BatchedEnquiry extends AnsweredEnquiry {
  readonly row: number;
  readonly reference: string;
}

export interface AnsweredBatch {
  readonly base: PromiseBase;
  readonly currency: string;
  readonly mode: BatchMode;
  /** As they were asked. */
  readonly answers: readonly BatchedEnquiry[];
}

interface ListedJob {
  readonly listed: ListedEnquiry;
  readonly ready: AskedJob;
}

/** Answers many enquiries on one desk; nothing is held. Between two of them the process may answer others. */
export async function answerBatch(
  standing: StandingDesk,
  { enquiries, mode }: { readonly enquiries: readonly ListedEnquiry[]; readonly mode: BatchMode },
  clock: Clock,
): Promise<Result<AnsweredBatch>> {
  const from = askedFrom(standing, clock.now());
  if (!from.ok) return from;
  const read = readAll(standing, enquiries, { from: from.value, mode });
  if (!read.ok) return read;
  const sequence = mode === "together" ? await bestSequence(standing, read.value, clock) : read.value;
  const answers = await inTurn(standing, sequence, mode);
  if (!answers.ok) return answers;
  const sorted = [...answers.value].sort((a, b) => a.row - b.row);
  const { currency } = standing.frame.plant;
  return ok({ base: baseOf(standing, from.value), currency, mode, answers: sorted });
}

/** Every enquiry ready for the engine, or everything that is wrong with any of them. Stock is shared out as they stand. */
function readAll(
  standing: StandingDesk,
  enquiries: readonly ListedEnquiry[],
  { from, mode }: { readonly from: number; readonly mode: BatchMode },
): Result<readonly ListedJob[]> {
  const faults: FieldFault[] = [];
  const jobs: ListedJob[] = [];
  let beside = standing;
  for (const listed of enquiries) {
    const orderId = ` enquiry ${listed.row}`;
    const ready = asked(beside, listed.enquiry, { from, orderId });
    if (!ready.ok) {
      const own =
        ready.error.faults.length === 0
          ? [{ path: "", problem: ready.error.cause, remedy: ready.error.remedy }]
          : ready.error.faults;
      faults.push(...own.map((fault) => ({ ...fault, path: `row ${listed.row}, ${fault.path}` })));
      continue;
    }
    jobs.push({ listed, ready: ready.value });
    if (mode !== "each alone") beside = takingStock(beside, ready.value, `enquiry ${listed.row}`);
  }
  return faults.length === 0 ? ok(jobs) : refused(badRows(faults));
}

/** The desk's records with what an enquiry takes from the shelf. */
function takingStock(standing: StandingDesk, { wish, quantity, from }: AskedJob, id: string): StandingDesk {
  if (quantity.fromStockPieces === 0) return standing;
  const order = orderOf(wish, { id, customer: "—", dueAt: from, earliestStartAt: from });
  const { records } = standing;
  const stockShares = sharesByOrder([
    ...records.stockShares,
    { orderId: id, pieces: quantity.fromStockPieces },
  ]);
  return { ...standing, orders: [...standing.orders, order], records: { ...records, stockShares } };
}

/** The sequence in which fewest are refused, then least late, then cheapest. */
async function bestSequence(
  { desk }: StandingDesk,
  jobs: readonly ListedJob[],
  { monotonicMs }: Clock,
): Promise<readonly ListedJob[]> {
  const made = jobs.flatMap(({ ready: { job } }) => (job === null ? [] : [job]));
  const best = await inSlices(promiseTogether(desk, made), monotonicMs);
  const rank = new Map(best.inTurn.map((orderId, place) => [orderId, place]));
  const rankOf = ({ ready: { job } }: ListedJob): number =>
    job === null ? -1 : (rank.get(job.orderId) ?? -1);
  return [...jobs].sort((a, b) => rankOf(a) - rankOf(b));
}

async function inTurn(
  standing: StandingDesk,
  jobs: readonly ListedJob[],
  mode: BatchMode,
): Promise<Result<readonly BatchedEnquiry[]>> {
  const answers: BatchedEnquiry[] = [];
  let desk: OpenDesk = standing.desk;
  for (const { listed, ready } of jobs) {
    await pause();
    const answered = answerOf({ ...standing, desk }, ready);
    if (!answered.ok) return answered;
    answers.push({ row: listed.row, reference: listed.reference, ...answered.value });
    const { outcome } = answered.value;
    if (mode === "each alone" || outcome.status !== "promised" || ready.job === null) continue;
    const taken = desk.promise(ready.job);
    if (taken.status === "faulty-order") return refused(problemFaulty(taken.faults));
    if (taken.status === "promised") desk = taken.promise.hold(Date.parse(outcome.offer.promised) / 1000);
  }
  return ok(answers);
}
