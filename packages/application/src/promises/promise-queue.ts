/** Work of one kind in each plant, one after the other in this process: what would get in its own way elsewhere waits here. */
export class PromiseQueue {
  readonly #last = new Map<string, Promise<unknown>>();

  /** Runs the work once all earlier work of the plant is done, whatever came of that. */
  async run<T>(plantId: string, work: () => Promise<T>): Promise<T> {
    const before = this.#last.get(plantId) ?? Promise.resolve();
    const mine = before.then(work, work);
    this.#last.set(plantId, mine);
    try {
      return await mine;
    } finally {
      if (this.#last.get(plantId) === mine) this.#last.delete(plantId);
    }
  }
}
