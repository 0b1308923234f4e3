import { useEffect, useRef, useState, type JSX } from "react";
import { useText } from "../../text/text.ts";
import { pastedFile } from "./pasted-file.ts";

interface PasteDialogProps {
  readonly onCheck: (files: readonly File[]) => void;
  readonly onClose: () => void;
}

export function PasteDialog({ onCheck, onClose }: PasteDialogProps): JSX.Element {
  const { imports: text } = useText();
  const dialog = useRef<HTMLDialogElement>(null);
  const [rows, setRows] = useState("");
  const [isEmpty, setEmpty] = useState(false);
  useEffect(() => dialog.current?.showModal(), []);
  const check = async (): Promise<void> => {
    const file = await pastedFile(rows);
    if (file === null) setEmpty(true);
    else onCheck([file]);
  };
  return (
    <dialog ref={dialog} className="dialog" aria-labelledby="paste-title" onClose={onClose}>
      <h2 id="paste-title">{text.pasteTitle}</h2>
      <p className="hint">{text.pasteHint}</p>
      <label>
        <span className="unseen">{text.pasteLabel}</span>
        <textarea
          rows={10}
          value={rows}
          spellCheck={false}
          onChange={(event) => setRows(event.target.value)}
        />
      </label>
      {isEmpty && (
        <p role="alert" className="late-words">
          {text.pasteEmpty}
        </p>
      )}
      <div className="tool-group">
        <button type="button" className="button button-main" onClick={() => void check()}>
          {text.pasteCheck}
        </button>
        <button type="button" className="button" onClick={onClose}>
          {text.cancel}
        </button>
      </div>
    </dialog>
  );
}
