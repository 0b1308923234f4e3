import type { ChangeDraft } from "../../kernels/scenario-draft.ts";
import type { ScenarioGround } from "./use-scenario-ground.ts";

/** What the fields of a change stand on. */
export interface ChangeFormProps<Draft extends ChangeDraft = ChangeDraft> {
  readonly ground: ScenarioGround;
  readonly draft: Draft;
  /** What is wrong, by field. */
  readonly remedies: ReadonlyMap<string, string>;
  readonly onChange: (draft: ChangeDraft) => void;
}
