/** One shared integer: the only word that reaches a thread that computes without a pause. 0 = go on, 1 = stop. */
export type CancelFlag = SharedArrayBuffer;

export const newCancelFlag = (): CancelFlag => new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);

export const raise = (flag: CancelFlag): void => void Atomics.store(new Int32Array(flag), 0, 1);

export function isRaised(flag: CancelFlag): () => boolean {
  const word = new Int32Array(flag);
  return () => Atomics.load(word, 0) === 1;
}
