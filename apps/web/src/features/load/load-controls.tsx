import type { JSX } from "react";
import type { LoadResponse } from "@formweek/contracts";
import { FileLinks } from "../../components/file-links.tsx";
import { Icon } from "../../components/icon.tsx";
import { TakeAway } from "../../components/take-away.tsx";
import { bucketSizes, loadTableAddress, resourceKinds } from "../../sync/load.ts";
import { useLanguage } from "../../text/text.ts";
import type { LoadAddress } from "./use-load-address.ts";

interface LoadControlsProps {
  readonly plantId: string;
  readonly shown: LoadAddress;
  /** Null while it is not there yet. */
  readonly load: LoadResponse | null;
  readonly onShow: (changes: Partial<LoadAddress>) => void;
}

/** Which resources, in what steps of time, from when; and the same as files. */
export function LoadControls({ plantId, shown, load, onShow }: LoadControlsProps): JSX.Element {
  const {
    text: { load: text },
    language,
  } = useLanguage();
  const page = (from: string | null): void => onShow({ from, at: null });
  return (
    <div className="load-controls">
      <div className="tool-group" role="group" aria-label={text.kind}>
        {resourceKinds.map((kind) => (
          <button
            key={kind}
            type="button"
            className="button"
            aria-pressed={kind === shown.kind}
            onClick={() => onShow({ kind, id: null, at: null })}
          >
            {text.kinds[kind]}
          </button>
        ))}
      </div>
      <div className="tool-group" role="group" aria-label={text.size}>
        {bucketSizes.map((bucket) => (
          <button
            key={bucket}
            type="button"
            className="button"
            aria-pressed={bucket === shown.bucket}
            onClick={() => onShow({ bucket, at: null })}
          >
            {text.sizes[bucket]}
          </button>
        ))}
      </div>
      {shown.bucket !== "week" && (
        <div className="tool-group" role="group" aria-label={text.time}>
          <button
            type="button"
            className="button"
            disabled={load === null || load.previousFrom === null}
            onClick={() => page(load?.previousFrom ?? null)}
          >
            <Icon name="left" /> {text.earlier}
          </button>
          <button
            type="button"
            className="button"
            disabled={load === null || load.nextFrom === null}
            onClick={() => page(load?.nextFrom ?? null)}
          >
            {text.later} <Icon name="right" />
          </button>
        </div>
      )}
      <span className="spring" />
      <TakeAway>
        <FileLinks
          hint={text.files}
          files={[
            [text.csv, loadTableAddress(plantId, shown, { format: "csv", language })],
            [text.xlsx, loadTableAddress(plantId, shown, { format: "xlsx", language })],
          ]}
        />
      </TakeAway>
    </div>
  );
}
