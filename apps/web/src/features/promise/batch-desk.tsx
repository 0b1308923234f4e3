import type { Plant } from "@formweek/capacity-model";
import { useId, useRef, useState, type JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { FailureNotice } from "../../components/notice.tsx";
import { useBatch, useBatchFile, type AskedFile } from "../../sync/promise-batch.ts";
import { saveFile } from "../../sync/save-file.ts";
import { useLanguage } from "../../text/text.ts";
import { BatchFaults } from "./batch-faults.tsx";
import { BatchTable } from "./batch-table.tsx";
import { pastedEnquiries } from "./pasted-enquiries.ts";

const modes = ["in turn", "each alone", "together"] as const;

/** Many enquiries at once, pasted or from a file: every bad row named, or every answer in a table. */
export function BatchDesk({ plant }: { readonly plant: Plant }): JSX.Element {
  const {
    text: { app, batch: text },
    language,
  } = useLanguage();
  const id = useId();
  const picker = useRef<HTMLInputElement>(null);
  const [rows, setRows] = useState("");
  const [mode, setMode] = useState<AskedFile["mode"]>("in turn");
  const [isEmpty, setEmpty] = useState(false);
  const [asked, setAsked] = useState<AskedFile | null>(null);
  const batch = useBatch(plant.id);
  const table = useBatchFile(plant.id);
  const ask = (file: File | null): void => {
    setEmpty(file === null);
    if (file === null) return;
    const wish = { file, mode };
    setAsked(wish);
    table.reset();
    batch.mutate(wish);
  };
  const save = (format: "csv" | "xlsx"): void => {
    if (asked === null) return;
    table.mutate(
      { ...asked, format, language },
      { onSuccess: (blob) => saveFile(blob, `${plant.id}-dates.${format}`) },
    );
  };
  const faults = batch.error?.problem.faults ?? [];
  return (
    <div className="batch">
      <h2>{text.lead}</h2>
      <p className="hint">{text.hint}</p>
      <fieldset className="choices">
        <legend>{text.mode}</legend>
        {modes.map((each) => (
          <label key={each}>
            <input type="radio" name={`${id}-mode`} checked={mode === each} onChange={() => setMode(each)} />{" "}
            {text.modes[each]}
          </label>
        ))}
      </fieldset>
      <label htmlFor={`${id}-rows`}>{text.paste}</label>
      <textarea
        id={`${id}-rows`}
        className="batch-rows"
        rows={7}
        value={rows}
        spellCheck={false}
        onChange={(event) => setRows(event.target.value)}
      />
      {isEmpty && (
        <p role="alert" className="late-words">
          {text.pasteEmpty}
        </p>
      )}
      <div className="tool-group">
        <button
          type="button"
          className="button button-main"
          disabled={batch.isPending}
          onClick={() =>
            void pastedEnquiries(rows).then((pasted) => {
              if (pasted !== null) setRows(pasted.text);
              ask(pasted?.file ?? null);
            })
          }
        >
          {batch.isPending ? text.asking : text.ask}
        </button>
        <button
          type="button"
          className="button"
          title={text.fileHint}
          disabled={batch.isPending}
          onClick={() => picker.current?.click()}
        >
          <Icon name="import" /> {text.file}
        </button>
        <input
          ref={picker}
          type="file"
          hidden
          accept=".csv,.xlsx"
          data-testid="batch-file"
          onChange={(event) => {
            ask(event.target.files?.[0] ?? null);
            event.target.value = "";
          }}
        />
        {asked !== null && <span className="hint">{asked.file.name}</span>}
      </div>
      {batch.error !== null &&
        (faults.length > 0 ? <BatchFaults faults={faults} /> : <FailureNotice isInner cause={batch.error} />)}
      {batch.data !== undefined && batch.error === null && (
        <>
          <BatchTable answers={batch.data.answers} timeZone={plant.timeZone} />
          <div className="tool-group">
            {(["csv", "xlsx"] as const).map((format) => (
              <button
                key={format}
                type="button"
                className="button"
                disabled={table.isPending}
                onClick={() => save(format)}
              >
                <Icon name="export" /> {text[format]}
              </button>
            ))}
            <span role="status">{table.isPending ? app.loading : ""}</span>
          </div>
          {table.error !== null && <FailureNotice isInner cause={table.error} />}
        </>
      )}
    </div>
  );
}
