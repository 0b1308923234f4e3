import type { ProblemData } from "@formweek/scheduler";

/** More ways to make all orders than the engine calls few. */
const WAYS = 20_001;

/**
 * The plant with as few orders as make it a large one: each may be made on every line in every set-up with a mould. They are those of
 * the plant again and again, under ids of their own.
 */
export function largePlant(small: ProblemData): ProblemData {
  const options = small.lines.flatMap(({ id: lineId }) =>
    small.setups.flatMap(({ id: setupId, mouldId }) =>
      mouldId === null ? [] : [{ lineId, setupId, secondsPerPiece: 2 }],
    ),
  );
  const copies = Math.ceil(WAYS / (options.length * small.jobs.length));
  const jobs = Array.from({ length: copies }, (_, copy) =>
    small.jobs.map((job) => ({ ...job, orderId: `${job.orderId}/${copy}`, options })),
  ).flat();
  return { ...small, jobs, pins: [] };
}
