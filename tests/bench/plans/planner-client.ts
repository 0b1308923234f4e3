import type {
  AcceptImportResponse,
  ImportReport,
  OrderBookResponse,
  PlanListResponse,
  PlantListResponse,
  SolveAccepted,
  SolveRunResponse,
} from "@formweek/contracts";

/** What the measurements ask of a server. Every call throws when the answer is a refusal or does not come. */
export class PlannerClient {
  readonly #api: string;

  constructor(address: string) {
    this.#api = `${address}/api`;
  }

  plants(): Promise<PlantListResponse> {
    return this.#ask("/plants");
  }

  orders(plantId: string): Promise<OrderBookResponse> {
    return this.#ask(`/plants/${plantId}/orders`);
  }

  plans(plantId: string): Promise<PlanListResponse> {
    return this.#ask(`/plants/${plantId}/plans`);
  }

  run(plantId: string, runId: string): Promise<SolveRunResponse> {
    return this.#ask(`/plants/${plantId}/solves/${runId}`);
  }

  solve(plantId: string, seconds: number): Promise<SolveAccepted> {
    return this.#ask(`/plants/${plantId}/solves`, this.#json({ seconds }));
  }

  preview(
    plantId: string,
    file: { readonly name: string; readonly bytes: Uint8Array },
  ): Promise<ImportReport> {
    const body = new FormData();
    body.append("file", new Blob([new Uint8Array(file.bytes)]), file.name);
    return this.#ask(`/plants/${plantId}/imports?kind=orders`, { method: "POST", body });
  }

  accept(plantId: string, { importId, revision }: ImportReport): Promise<AcceptImportResponse> {
    return this.#ask(`/plants/${plantId}/imports/${importId}/accept`, this.#json({ revision }));
  }

  #json(body: object): RequestInit {
    return { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(body) };
  }

  async #ask<Answer>(path: string, request: RequestInit = {}): Promise<Answer> {
    const response = await fetch(`${this.#api}${path}`, request);
    const text = await response.text();
    if (!response.ok) throw new Error(`${path}: ${response.status} ${text.slice(0, 300)}`);
    return JSON.parse(text) as Answer;
  }
}

/** Asks again and again until the answer is there; an unanswered question counts as "not yet". */
export async function until<Answer>(ask: () => Promise<Answer | null>, withinMs: number): Promise<Answer> {
  const end = Date.now() + withinMs;
  for (;;) {
    const answer = await ask().catch(() => null);
    if (answer !== null) return answer;
    if (Date.now() > end) throw new Error(`No answer within ${withinMs} ms.`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}
