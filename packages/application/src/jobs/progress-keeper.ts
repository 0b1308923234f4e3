import type { Ports } from "../ports/ports.ts";
import type { CurvePoint, SolveRun } from "../ports/run-repository.ts";
import type { SolveProgressReport } from "../ports/solve-runner.ts";

/** The curve is thinned to half when it grows beyond this. */
const LONGEST_CURVE = 400;

export interface ProgressKeeper {
  readonly report: (progress: SolveProgressReport) => void;
  /** Resolves when everything reported is stored; nothing is stored afterwards. */
  readonly settle: () => Promise<void>;
}

/** Stores and publishes a run's progress, one write at a time: reports that come meanwhile are merged into the next write. */
export function progressKeeper(
  ports: Pick<Ports, "store" | "bus" | "clock" | "log">,
  run: SolveRun,
): ProgressKeeper {
  let curve: readonly CurvePoint[] = [];
  let waiting: SolveProgressReport | null = null;
  let writing: Promise<void> | null = null;

  const writeAll = async (): Promise<void> => {
    while (waiting !== null) {
      const progress: SolveProgressReport = waiting;
      waiting = null;
      await write(progress).catch((error: unknown) => {
        ports.log.warn("Progress of a run was not stored", { runId: run.id, reason: String(error) });
      });
    }
    writing = null;
  };
  const write = async (progress: SolveProgressReport): Promise<void> => {
    await ports.store.write(async ({ runs }) => {
      await runs.saveProgress(run.id, progress, curve);
      return { ok: true, value: null };
    });
    await ports.bus.publish({
      plantId: run.plantId,
      sequence: null,
      at: ports.clock.now(),
      body: { type: "solve-progress", runId: run.id, state: "running", progress },
    });
  };

  return {
    report: (progress) => {
      curve = grown(curve, progress);
      waiting = progress;
      writing ??= writeAll();
    },
    settle: async () => {
      while (writing !== null) await writing;
    },
  };
}

/** The curve with a point more where the total got better; totals along it only fall. */
export function grown(curve: readonly CurvePoint[], progress: SolveProgressReport): readonly CurvePoint[] {
  const last = curve.at(-1);
  if (last !== undefined && progress.bestTotal >= last[1]) return curve;
  const longer: readonly CurvePoint[] = [...curve, [progress.elapsedMs, progress.bestTotal]];
  if (longer.length <= LONGEST_CURVE) return longer;
  return longer.filter((_, index) => index % 2 === 0 || index === longer.length - 1);
}
