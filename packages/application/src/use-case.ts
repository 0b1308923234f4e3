import type { Actor, Role } from "./actor.ts";
import { authorise } from "./authorise.ts";
import type { Ports } from "./ports/ports.ts";
import { type Result } from "./result.ts";

/** What every use case about one plant is asked with. */
export interface PlantInput {
  readonly plantId: string;
}

/** One use case: the least role it takes in the plant, and what it does once that is checked. */
export interface UseCase<Input extends PlantInput, Output> {
  readonly role: Role | ((input: Input) => Role);
  readonly run: (ports: Ports, input: Input, actor: Actor) => Promise<Result<Output>>;
}

/** A use case as the shells call it. */
export type Ask<Input, Output> = (input: Input, actor: Actor) => Promise<Result<Output>>;

/** Puts the check of roles before a use case; nothing reaches `run` without it. */
export function guarded<Input extends PlantInput, Output>(
  ports: Ports,
  useCase: UseCase<Input, Output>,
): Ask<Input, Output> {
  return async (input, actor) => {
    const needed = typeof useCase.role === "function" ? useCase.role(input) : useCase.role;
    const allowed = authorise(actor, input.plantId, needed);
    return allowed.ok ? useCase.run(ports, input, actor) : allowed;
  };
}
