import type { Scenario, ScenarioChange } from "@formweek/contracts";
import { useEffect, useRef, useState, type FormEvent, type JSX } from "react";
import { FailureWords } from "../../components/failure-words.tsx";
import { FieldFrame, halfWritten } from "../../components/field-frame.tsx";
import { Modal } from "../../components/modal.tsx";
import { problemInWords } from "../../components/notice.tsx";
import { useNaming } from "../../format/use-naming.ts";
import { scenarioFaults } from "../../kernels/scenario-faults.ts";
import {
  changeKinds,
  draftOfChange,
  freshChange,
  readChange,
  type ChangeDraft,
  type ChangeKind,
} from "../../kernels/scenario-draft.ts";
import { mostChanges, useWriteScenario } from "../../sync/scenarios.ts";
import { useText } from "../../text/text.ts";
import { ChangeRow } from "./change-row.tsx";
import { localRemedies } from "./change-remedies.ts";
import type { ScenarioGround } from "./use-scenario-ground.ts";

/** A scenario as the form is opened with it. */
export interface EditedScenario {
  /** Null: a new one. */
  readonly over: Scenario | null;
  readonly name: string;
  readonly changes: readonly ScenarioChange[];
}

interface ScenarioEditorProps {
  readonly ground: ScenarioGround;
  readonly edited: EditedScenario;
  readonly onSaved: (scenario: Scenario) => void;
  readonly onClose: () => void;
}

interface Row {
  /** Stays its own while rows come and go. */
  readonly key: number;
  readonly draft: ChangeDraft;
}

type RowFaults = ReadonlyMap<number, ReadonlyMap<string, string>>;

interface Faults {
  /** By the row's key, then by field. */
  readonly rows: RowFaults;
  readonly name: string | null;
  readonly others: readonly string[];
}

const noFaults: Faults = { rows: new Map(), name: null, others: [] };

/** A scenario as a form: its name, and its changes one under the other with one of them open. */
export function ScenarioEditor({ ground, edited, onSaved, onClose }: ScenarioEditorProps): JSX.Element {
  const text = useText();
  const naming = useNaming();
  const { editor, kinds } = text.whatIf;
  const form = useRef<HTMLFormElement>(null);
  const write = useWriteScenario(ground.plantId);
  const [name, setName] = useState(edited.name);
  const [rows, setRows] = useState<readonly Row[]>(() =>
    edited.changes.map((change, key) => ({ key, draft: draftOfChange(change, ground) })),
  );
  const [open, setOpen] = useState<number | null>(edited.over === null && rows.length === 1 ? 0 : null);
  const [kind, setKind] = useState<ChangeKind>(changeKinds[0]);
  const [faults, setFaults] = useState<Faults>(noFaults);
  useEffect(() => {
    if (faults !== noFaults) form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [faults]);

  const fail = (found: Faults): void => {
    setFaults(found);
    const first = rows.find(({ key }) => found.rows.has(key));
    if (first !== undefined) setOpen(first.key);
  };
  const add = (): void => {
    const key = Math.max(-1, ...rows.map((row) => row.key)) + 1;
    setRows([...rows, { key, draft: freshChange(kind, ground) }]);
    setOpen(key);
  };
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const read: ScenarioChange[] = [];
    const faulty = new Map<number, ReadonlyMap<string, string>>();
    const unreadable = halfWritten(form.current);
    for (const { key, draft } of rows) {
      const reading = readChange(draft, ground);
      const fields = [
        ...(reading.kind === "faulty" ? reading.fields : []),
        ...(key === open ? unreadable : []),
      ];
      if (fields.length > 0) faulty.set(key, localRemedies(draft.kind, fields, text));
      else if (reading.kind === "read") read.push(reading.change);
    }
    const nameFault = name.trim() === "" ? editor.remedies.name : null;
    const others = rows.length === 0 ? [editor.remedies.changes] : [];
    if (faulty.size > 0 || nameFault !== null || others.length > 0)
      return fail({ rows: faulty, name: nameFault, others });
    setFaults(noFaults);
    write.mutate(
      { over: edited.over, draft: { name: name.trim(), changes: read } },
      {
        onSuccess: onSaved,
        onError: (cause) => {
          const found = scenarioFaults(problemInWords(cause, text, naming).faults);
          const byKey = new Map(
            rows.flatMap(({ key }, place) => {
              const own = found.changes.get(place);
              return own === undefined ? [] : [[key, own] as const];
            }),
          );
          const isAtFields = byKey.size > 0 || found.name !== null || found.others.length > 0;
          if (isAtFields) fail({ rows: byKey, name: found.name, others: found.others });
        },
      },
    );
  };
  const isFull = rows.length >= mostChanges;
  return (
    <Modal title={edited.over === null ? editor.titleNew : editor.titleEdit} onClose={onClose}>
      <form ref={form} className="scenario-form" noValidate onSubmit={save}>
        <FieldFrame label={editor.name} name="scenario-name" remedy={faults.name}>
          {(control) => (
            <input
              {...control}
              className="field"
              autoComplete="off"
              autoFocus
              maxLength={80}
              placeholder={editor.nameHint}
              value={name}
              onChange={({ target }) => setName(target.value)}
            />
          )}
        </FieldFrame>
        <h3>{editor.changes}</h3>
        {rows.length === 0 ? (
          <p className="hint">{editor.none}</p>
        ) : (
          <ol className="change-rows">
            {rows.map(({ key, draft }) => (
              <ChangeRow
                key={key}
                ground={ground}
                draft={draft}
                isOpen={key === open}
                remedies={faults.rows.get(key)}
                onOpen={() => setOpen(key === open ? null : key)}
                onChange={(changed) =>
                  setRows((before) => before.map((row) => (row.key === key ? { key, draft: changed } : row)))
                }
                onRemove={() => setRows(rows.filter((row) => row.key !== key))}
              />
            ))}
          </ol>
        )}
        {isFull ? (
          <p className="hint">{editor.most(mostChanges)}</p>
        ) : (
          <div className="what-if-buttons">
            <select
              className="select"
              aria-label={editor.addKind}
              value={kind}
              onChange={({ target }) => setKind(changeKinds.find((each) => each === target.value) ?? kind)}
            >
              {changeKinds.map((each) => (
                <option key={each} value={each}>
                  {kinds[each]}
                </option>
              ))}
            </select>
            <button type="button" className="button" onClick={add}>
              {editor.add}
            </button>
          </div>
        )}
        {faults.others.map((words) => (
          <p key={words} role="alert" className="late-words">
            {words}
          </p>
        ))}
        {write.error !== null && faults === noFaults && <FailureWords cause={write.error} />}
        <div className="tool-group">
          <button type="submit" className="button button-main" disabled={write.isPending}>
            {write.isPending ? editor.saving : editor.save}
          </button>
          <button type="button" className="button" onClick={onClose}>
            {editor.cancel}
          </button>
        </div>
      </form>
    </Modal>
  );
}
