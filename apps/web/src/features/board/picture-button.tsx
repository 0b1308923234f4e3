import { lazy, Suspense, useState, type JSX } from "react";
import { CrashGuard } from "../../components/crash-guard.tsx";
import { Icon } from "../../components/icon.tsx";
import { fetchPart } from "../../sync/missing-part.ts";
import { useText } from "../../text/text.ts";
import type { PictureParts } from "./picture-dialog.tsx";

const PictureDialog = lazy(async () => {
  const { PictureDialog: Dialog } = await fetchPart(() => import("./picture-dialog.tsx"));
  return { default: Dialog };
});

/** Offers the board as a picture; what draws it is fetched when it is asked for. */
export function PictureButton({ parts }: { readonly parts: PictureParts }): JSX.Element {
  const { picture: text } = useText();
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="button" onClick={() => setOpen(true)}>
        <Icon name="export" /> {text.open}
      </button>
      {isOpen && (
        <CrashGuard>
          <Suspense>
            <PictureDialog parts={parts} onClose={() => setOpen(false)} />
          </Suspense>
        </CrashGuard>
      )}
    </>
  );
}
