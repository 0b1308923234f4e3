/**
 * The engine's local search on one line beside plain C loops of the same work (block-moves.c, gcc -O2), in one run: the same
 * descents, which must judge as many moves and end at the same money to the last bit; processor time, median of rounds in turn.
 * The same C file is also built with the costs that the engine's machine code bears beside the work itself, to show what each
 * of them takes. Needs a C compiler; says so and ends well where there is none.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { BlockMoves } from "../../../packages/scheduler/src/improve/sequence/block-moves.ts";
import type { OneLine } from "../../../packages/scheduler/src/improve/sequence/one-line.ts";
import { runBench } from "../run-bench.ts";
import { seededDraws } from "../planted/seeded-draws.ts";

const ORDERS = 60;
/** Starts at random, and starts that are a sequence at rest with two orders exchanged: what a search mostly does. */
const SHUFFLED_STARTS = 40;
const KICKED_STARTS = 1000;
const ROUNDS = 7;

/** Builds of the C file by the costs they bear, which its head tells of. */
const BUILDS = {
  "plain C": [],
  "C, indices checked": ["INDEX_CHECKS"],
  "C, overflow checked": ["OVERFLOW_CHECKS"],
  "C, both checked": ["INDEX_CHECKS", "OVERFLOW_CHECKS"],
  "C, fresh loads": ["FRESH_LOADS"],
  "C, all of these": ["INDEX_CHECKS", "OVERFLOW_CHECKS", "FRESH_LOADS"],
} as const;

interface Work {
  readonly line: OneLine;
  readonly starts: readonly Int32Array[];
}

interface Round {
  readonly moves: number;
  /** Sum of the money at which the descents end. */
  readonly money: number;
  readonly seconds: number;
}

/** `tightness`: how far before the end of the line's work the mean due date lies, as a share of it. */
function workOf(tightness: number): Work {
  const n = ORDERS;
  const draw = seededDraws(11);
  const below = (bound: number) => Math.floor(draw() * bound);
  const mean = Math.max(0, 1 - tightness) * n * 75;
  const line: OneLine = {
    n,
    freeAt: 0,
    step: Int32Array.from({ length: (n + 1) * n }, () => 50 + below(200)),
    changeMoney: new Float64Array((n + 1) * n),
    changesCost: false,
    due: Float64Array.from({ length: n }, () => Math.floor(mean * (0.6 + 0.8 * draw()))),
    rate: Float64Array.from({ length: n }, () => below(11)),
  };
  const swapped = (sequence: Int32Array, p: number, q: number) => {
    const [a = 0, b = 0] = [sequence[p], sequence[q]];
    return sequence.with(p, b).with(q, a);
  };
  const starts: Int32Array[] = [];
  for (let start = 0; start < SHUFFLED_STARTS; start++) {
    let sequence = Int32Array.from({ length: n }, (_, order) => order);
    for (let p = n - 1; p > 0; p--) sequence = swapped(sequence, p, below(p + 1));
    starts.push(sequence);
  }
  const atRest = new BlockMoves(line);
  atRest.load(starts[0] ?? new Int32Array(n));
  atRest.descend(0);
  for (let start = 0; start < KICKED_STARTS; start++)
    starts.push(swapped(atRest.sequence, below(n), below(n)));
  return { line, starts };
}

function engineRound({ line, starts }: Work): Round {
  const moves = new BlockMoves(line);
  let money = 0;
  const began = process.cpuUsage();
  for (const start of starts) {
    moves.load(start);
    moves.descend(0);
    money += moves.money;
  }
  const { user, system } = process.cpuUsage(began);
  return { moves: moves.evaluations, money, seconds: (user + system) / 1e6 };
}

function programRound(program: string, { line, starts }: Work): Round {
  const { n, freeAt, step, due, rate } = line;
  const sequences = starts.flatMap((start) => [...start]);
  const input = [n, freeAt, ...step, ...due, ...rate, starts.length, ...sequences].join(" ");
  const { stdout, stderr, status } = spawnSync(program, { input, encoding: "utf8" });
  if (status !== 0) throw new Error(`The C program failed: ${stderr}`);
  const [moves = NaN, , money = NaN, seconds = NaN] = stdout.trim().split(" ").map(Number);
  return { moves, money, seconds };
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? NaN;
}

/** Rounds of the engine and of each program in turn, as M moves/s; all must do the same work. */
function ratesOf(programs: ReadonlyMap<string, string>, work: Work): Map<string, number[]> {
  const first = engineRound(work);
  const rates = new Map<string, number[]>(["engine", ...programs.keys()].map((name) => [name, []]));
  const record = (name: string, round: Round) => {
    if (round.moves !== first.moves || round.money !== first.money)
      throw new Error(
        `Not the same work: ${round.moves} moves to ${round.money} by ${name}, ${first.moves} to ${first.money} by the engine.`,
      );
    rates.get(name)?.push(round.moves / round.seconds / 1e6);
  };
  for (let round = 0; round < ROUNDS; round++) {
    record("engine", engineRound(work));
    for (const [name, program] of programs) record(name, programRound(program, work));
  }
  return rates;
}

function compare(programs: ReadonlyMap<string, string>, tightness: number): void {
  const rates = ratesOf(programs, workOf(tightness));
  const engine = median(rates.get("engine") ?? []);
  console.log(`tightness ${tightness}, median M moves/s (lowest to highest) and times the engine's:`);
  for (const [name, values] of rates) {
    const spread = `${Math.min(...values).toFixed(0)} to ${Math.max(...values).toFixed(0)}`;
    const ratio = (median(values) / engine).toFixed(2);
    console.log(`  ${name.padEnd(20)} ${median(values).toFixed(0).padStart(4)} (${spread})  ${ratio}`);
  }
}

/** Undefined where there is no C compiler. */
function build(folder: string): Map<string, string> | undefined {
  const source = fileURLToPath(new URL("block-moves.c", import.meta.url));
  const programs = new Map<string, string>();
  for (const [name, costs] of Object.entries(BUILDS)) {
    const program = join(folder, ["block-moves", ...costs].join("-"));
    const flags = costs.map((cost) => `-D${cost}`);
    const built = spawnSync("gcc", ["-O2", ...flags, "-o", program, source], { encoding: "utf8" });
    if (built.error !== undefined) return undefined;
    if (built.status !== 0) throw new Error(built.stderr);
    programs.set(name, program);
  }
  return programs;
}

function main(): void {
  const folder = mkdtempSync(join(tmpdir(), "block-moves-"));
  try {
    const programs = build(folder);
    if (programs === undefined) {
      console.log("skipped: no C compiler");
      return;
    }
    for (const tightness of [0.5, 0.7, 0.9]) compare(programs, tightness);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

await runBench("npm run bench:kernel: no options; needs a C compiler (gcc).", [], main);
