import { keptPlantId } from "./plant-choice.ts";

interface FirstCall {
  readonly askedAt: number;
  readonly answer: Promise<Response>;
}

/** An answer that nobody took for so long is old. */
const freshMs = 10_000;
/** Pages that show the plan that is worked on. */
const planPages = new Set(["/", "/sheets", "/plans"]);

const asked = new Map<string, FirstCall>();

function ask(url: string): Promise<Response> {
  const answer = fetch(url);
  asked.set(url, { askedAt: performance.now(), answer });
  // Whoever takes it hears of a failure; nobody may.
  answer.catch(() => undefined);
  return answer;
}

/** Asks ahead for the plants and, where the page of the address shows it, the plan of the one that will be opened. */
export function askFirst(page: string): void {
  const plants = ask("/api/plants");
  if (!planPages.has(page)) return;
  void plants.then(
    async (answer) => {
      const plantId = answer.ok ? openedOf(await answer.clone().json()) : null;
      if (plantId !== null) void ask(`/api/plants/${encodeURIComponent(plantId)}/plans/latest`);
    },
    () => undefined,
  );
}

/** The answer to a call that was asked for ahead, once; undefined where it was not, or too long ago. */
export function takeFirst(url: string): Promise<Response> | undefined {
  const call = asked.get(url);
  asked.delete(url);
  return call !== undefined && performance.now() - call.askedAt < freshMs ? call.answer : undefined;
}

/** The plant that was open last, else the first; null where the list is none. The app reads the same answer with care. */
function openedOf(plants: unknown): string | null {
  const ids = Array.isArray(plants)
    ? plants.flatMap((plant: unknown) =>
        typeof plant === "object" && plant !== null && "id" in plant && typeof plant.id === "string"
          ? [plant.id]
          : [],
      )
    : [];
  const kept = keptPlantId();
  return ids.find((id) => id === kept) ?? ids[0] ?? null;
}
