import { ok, type Repositories, type UnitOfWork } from "@formweek/application";
import { beforeAll } from "vitest";
import { barePlant, newId } from "../../fixtures/stored-records.ts";

/** A store that is opened once before the tests of a suite, with the short ways to write to it. */
export interface OpenedStore {
  readonly store: () => UnitOfWork;
  /** Writes in one transaction that must not be refused. */
  readonly commit: <T>(work: (repositories: Repositories) => Promise<T>) => Promise<T>;
  /** Writes a bare plant and gives its id. */
  readonly newPlant: () => Promise<string>;
}

export function openedStore(open: () => Promise<UnitOfWork>): OpenedStore {
  let store: UnitOfWork;
  beforeAll(async () => {
    store = await open();
  });
  const commit: OpenedStore["commit"] = async (work) => {
    const result = await store.write(async (repositories) => ok(await work(repositories)));
    if (!result.ok) throw new Error("a commit was refused");
    return result.value;
  };
  const newPlant = async (): Promise<string> => {
    const id = newId();
    await commit(({ plants }) => plants.put(barePlant(id), null));
    return id;
  };
  return { store: () => store, commit, newPlant };
}
