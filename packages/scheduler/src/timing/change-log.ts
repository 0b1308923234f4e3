import type { ChangeTimes } from "./change-timing.ts";

/** Every change of a decoded plan, in the order in which they were fixed. Instants in s after the horizon's start. */
export interface ChangeLog {
  count: number;
  readonly line: Int32Array;
  /** set-up or -1 */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly spec: Int32Array;
  readonly start: Int32Array;
  readonly mountStart: Int32Array;
  readonly tailStart: Int32Array;
  readonly end: Int32Array;
  /** team, trolley, copy out, copy in: each or -1 */
  readonly team: Int32Array;
  readonly trolley: Int32Array;
  readonly copyOut: Int32Array;
  readonly copyIn: Int32Array;
  /** 1 when the change only takes the mould out */
  readonly stripping: Uint8Array;
}

export interface ChangeFacts {
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly spec: number;
  readonly trolley: number;
  readonly copyOut: number;
  readonly copyIn: number;
  readonly stripping: boolean;
}

export function createChangeLog(capacity: number): ChangeLog {
  const column = (): Int32Array => new Int32Array(capacity);
  return {
    count: 0,
    line: column(),
    from: column(),
    to: column(),
    spec: column(),
    start: column(),
    mountStart: column(),
    tailStart: column(),
    end: column(),
    team: column(),
    trolley: column(),
    copyOut: column(),
    copyIn: column(),
    stripping: new Uint8Array(capacity),
  };
}

export function logChange(log: ChangeLog, facts: ChangeFacts, times: ChangeTimes): void {
  const i = log.count++;
  log.line[i] = facts.line;
  log.from[i] = facts.from;
  log.to[i] = facts.to;
  log.spec[i] = facts.spec;
  log.start[i] = times.start;
  log.mountStart[i] = times.mountStart;
  log.tailStart[i] = times.tailStart;
  log.end[i] = times.end;
  log.team[i] = times.team;
  log.trolley[i] = facts.trolley;
  log.copyOut[i] = facts.copyOut;
  log.copyIn[i] = facts.copyIn;
  log.stripping[i] = facts.stripping ? 1 : 0;
}
