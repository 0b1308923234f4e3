import { useEffect, useRef, useState, type DragEvent, type JSX, type ReactNode } from "react";
import type { Plant } from "@formweek/capacity-model";
import type { AcceptImportResponse, ImportKind, ImportReport } from "@formweek/contracts";
import { Icon } from "../../components/icon.tsx";
import { FailureNotice } from "../../components/notice.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useAcceptImport, useDryRun } from "../../sync/imports.ts";
import { useText } from "../../text/text.ts";
import { ImportReportView } from "./import-report.tsx";
import { PasteDialog } from "./paste-dialog.tsx";
import { pastedFile } from "./pasted-file.ts";

interface ImportDeskProps {
  readonly plantId: string;
  readonly kind: ImportKind;
  /** Told of an accepted import; it may have changed another plant, or made a new one. */
  readonly onAccepted?: (report: ImportReport, answer: AcceptImportResponse) => void;
  /** For the names of products in what orders change; undefined until it is known. */
  readonly plant?: Plant | undefined;
  /** Shown after an accepted import, such as the way to a new plan. */
  readonly next: ReactNode;
  /** The page while no import is open; gets the buttons that start one. */
  readonly children: (buttons: ReactNode) => ReactNode;
}

/**
 * Brings files in: chosen, dropped on the page, or pasted. They are only checked at first; the report takes the page's
 * place until the planner accepts it or leaves everything as it is.
 */
export function ImportDesk({
  plantId,
  kind,
  onAccepted,
  plant,
  next,
  children,
}: ImportDeskProps): JSX.Element {
  const text = useText();
  const dryRun = useDryRun(plantId, kind);
  const accept = useAcceptImport();
  const [names, setNames] = useState("");
  const [isPasting, setPasting] = useState(false);
  const [applied, setApplied] = useState<AcceptImportResponse | null>(null);
  const files = useRef<readonly File[]>([]);

  const check = (chosen: readonly File[]): void => {
    if (chosen.length === 0) return;
    files.current = chosen;
    setNames(chosen.map((file) => file.name).join(", "));
    setApplied(null);
    setPasting(false);
    accept.reset();
    dryRun.mutate(chosen);
  };
  const leave = (): void => {
    dryRun.reset();
    accept.reset();
  };
  usePasteOnPage(kind === "orders" && dryRun.data === undefined && !isPasting, check);

  return (
    <DropArea onFiles={check}>
      {dryRun.isPending && (
        <div className="notice notice-loading" role="status">
          <span className="loading-web" aria-hidden="true" />
          {text.imports.checking} {names}
        </div>
      )}
      {dryRun.isError && (
        <div className="page">
          <FailureNotice cause={dryRun.error} />
          <div className="tool-group center">
            <FileButton kind={kind} onFiles={check} />
            <button type="button" className="button" onClick={leave}>
              {text.imports.leave}
            </button>
          </div>
        </div>
      )}
      {dryRun.data !== undefined && (
        <ImportReportView
          report={dryRun.data}
          openPlantId={plantId}
          plant={plant}
          isAccepting={accept.isPending}
          failure={accept.error}
          onAccept={() =>
            accept.mutate(dryRun.data, {
              onSuccess: (answer) => {
                setApplied(answer);
                onAccepted?.(dryRun.data, answer);
                dryRun.reset();
              },
            })
          }
          onCheckAgain={() => check(files.current)}
          onLeave={leave}
        />
      )}
      {dryRun.isIdle && (
        <>
          {applied !== null && <AppliedNote applied={applied} next={next} onClose={() => setApplied(null)} />}
          {children(
            <>
              <FileButton kind={kind} onFiles={check} />
              {kind === "orders" && (
                <button type="button" className="button" onClick={() => setPasting(true)}>
                  {text.imports.paste}
                </button>
              )}
            </>,
          )}
        </>
      )}
      {isPasting && <PasteDialog onCheck={check} onClose={() => setPasting(false)} />}
    </DropArea>
  );
}

interface FileButtonProps {
  readonly kind: ImportKind;
  readonly onFiles: (files: readonly File[]) => void;
}

function FileButton({ kind, onFiles }: FileButtonProps): JSX.Element {
  const text = useText();
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <input
        ref={input}
        type="file"
        hidden
        accept=".csv,.xlsx,text/csv"
        multiple={kind === "plant"}
        data-testid="import-file"
        onChange={(event) => {
          onFiles([...(event.target.files ?? [])]);
          event.target.value = "";
        }}
      />
      <button type="button" className="button button-main" onClick={() => input.current?.click()}>
        <Icon name="import" /> {text.imports.choose}
      </button>
    </>
  );
}

/** The whole page takes files that are dropped on it. */
function DropArea({
  onFiles,
  children,
}: {
  readonly onFiles: (files: readonly File[]) => void;
  readonly children: ReactNode;
}): JSX.Element {
  const text = useText();
  const [isOver, setOver] = useState(false);
  const onDragOver = (event: DragEvent): void => {
    if (!event.dataTransfer.types.includes("Files")) return;
    event.preventDefault();
    setOver(true);
  };
  const onDrop = (event: DragEvent): void => {
    event.preventDefault();
    setOver(false);
    onFiles([...event.dataTransfer.files]);
  };
  return (
    <div
      className="drop-area"
      onDragOver={onDragOver}
      onDragLeave={(event) => {
        if (
          event.currentTarget === event.target ||
          !event.currentTarget.contains(event.relatedTarget as Node | null)
        )
          setOver(false);
      }}
      onDrop={onDrop}
    >
      {children}
      {isOver && (
        <div className="drop-note">
          <strong>{text.imports.drop}</strong>
          <span>{text.imports.dropHint}</span>
        </div>
      )}
    </div>
  );
}

interface AppliedNoteProps {
  readonly applied: AcceptImportResponse;
  readonly next: ReactNode;
  readonly onClose: () => void;
}

function AppliedNote({ applied, next, onClose }: AppliedNoteProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const { added, changed } = applied.applied;
  const isNothing = added + changed === 0;
  return (
    <div className="applied" role="status">
      <Icon name="check" />
      <span>
        {isNothing
          ? text.imports.appliedNothing
          : text.imports.applied(format.count(added), format.count(changed))}
      </span>
      {!isNothing && next}
      <button type="button" className="button button-icon" aria-label={text.app.close} onClick={onClose}>
        <Icon name="close" />
      </button>
    </div>
  );
}

/** Rows pasted anywhere on the page (not into a field) are checked like a file. */
function usePasteOnPage(isOn: boolean, check: (files: readonly File[]) => void): void {
  const latest = useRef(check);
  latest.current = check;
  useEffect(() => {
    if (!isOn) return;
    const onPaste = (event: ClipboardEvent): void => {
      const target = event.target as Element | null;
      if (target?.closest("input, textarea, select") !== null && target !== null) return;
      const pasted = event.clipboardData?.getData("text/plain") ?? "";
      void pastedFile(pasted).then((file) => {
        if (file !== null) latest.current([file]);
      });
    };
    document.addEventListener("paste", onPaste);
    return () => document.removeEventListener("paste", onPaste);
  }, [isOn]);
}
