/**
 * The engine's local search on one line beside plain C loops of the same work (block-moves.c, gcc -O2), in one run: the same
 * descents, which must judge as many moves and end at the same money to the last bit; processor time, median of rounds in turn.
 * Needs a C compiler; says so and ends well where there is none.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { BlockMoves } from "../../../packages/scheduler/src/improve/sequence/block-moves.ts";
import type { OneLine } from "../../../packages/scheduler/src/improve/sequence/one-line.ts";
import { seededDraws } from "../planted/seeded-draws.ts";

const ORDERS = 60;
/** Starts at random, and starts that are a sequence at rest with two orders exchanged: what a search mostly does. */
const SHUFFLED_STARTS = 40;
const KICKED_STARTS = 1000;
const ROUNDS = 7;

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

function plainRound(program: string, { line, starts }: Work): Round {
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

function compare(program: string, tightness: number): void {
  const work = workOf(tightness);
  engineRound(work);
  const engine: number[] = [];
  const plain: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const ours = engineRound(work);
    const theirs = plainRound(program, work);
    if (ours.moves !== theirs.moves || ours.money !== theirs.money)
      throw new Error(
        `Not the same work: ${ours.moves} moves to ${ours.money} by the engine, ${theirs.moves} to ${theirs.money} by the C program.`,
      );
    engine.push(ours.moves / ours.seconds / 1e6);
    plain.push(theirs.moves / theirs.seconds / 1e6);
  }
  const ratio = median(plain) / median(engine);
  const cells = [median(engine), median(plain)].map((rate) => `${rate.toFixed(0)} M moves/s`);
  console.log(`tightness ${tightness}: engine ${cells[0]}, C ${cells[1]}, ratio ${ratio.toFixed(2)}`);
}

function main(): void {
  const folder = mkdtempSync(join(tmpdir(), "block-moves-"));
  try {
    const program = join(folder, "block-moves");
    const source = fileURLToPath(new URL("block-moves.c", import.meta.url));
    const built = spawnSync("gcc", ["-O2", "-o", program, source], { encoding: "utf8" });
    if (built.error !== undefined) {
      console.log("skipped: no C compiler");
      return;
    }
    if (built.status !== 0) throw new Error(built.stderr);
    for (const tightness of [0.5, 0.7, 0.9]) compare(program, tightness);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

main();
