import { useEffect, useRef, useState, type JSX } from "react";
import { useFormat } from "../../format/use-format.ts";
import { pictureExtents, type PictureExtent } from "../../kernels/picture-layout.ts";
import type { Picture } from "../../render/draw-picture.ts";
import { paletteOf, readPalette } from "../../render/palette.ts";
import { browserMeasure, pngOf, svgOf } from "../../render/picture-files.ts";
import { nowSeconds } from "../../sync/now.ts";
import { saveFile } from "../../sync/save-file.ts";
import { useLanguage } from "../../text/text.ts";
import { boardPicture, pictureFileName, type PictureSource } from "./board-picture.ts";
import { useBoardStore } from "./use-board.ts";

const colourings = ["light", "screen"] as const;

export type PictureParts = Pick<
  PictureSource,
  "plant" | "names" | "held" | "promised" | "madeAt" | "frozenUntil"
>;

/** Asks what a picture of the board is to show, and saves it. */
export function PictureDialog({
  parts,
  onClose,
}: {
  readonly parts: PictureParts;
  readonly onClose: () => void;
}): JSX.Element {
  const { text, locale } = useLanguage();
  const format = useFormat();
  const store = useBoardStore();
  const dialog = useRef<HTMLDialogElement>(null);
  const [extent, setExtent] = useState<PictureExtent>("in sight");
  const [colours, setColours] = useState<(typeof colourings)[number]>("light");
  const [isTooLarge, setTooLarge] = useState(false);
  useEffect(() => dialog.current?.showModal(), []);

  const picture = (): Picture | null => {
    const palette = colours === "light" ? paletteOf("light") : readPalette(document.documentElement);
    const source = { ...parts, text, format, now: nowSeconds() };
    return boardPicture(store.read(), source, { extent, palette });
  };
  const saveSvg = (): void => {
    const drawn = picture();
    if (drawn === null) return;
    const svg = svgOf(drawn, browserMeasure(), locale);
    saveFile(new Blob([svg], { type: "image/svg+xml" }), pictureFileName(drawn, "svg"));
    onClose();
  };
  const savePng = async (): Promise<void> => {
    const drawn = picture();
    if (drawn === null) return;
    const png = await pngOf(drawn);
    setTooLarge(png === null);
    if (png === null) return;
    saveFile(png, pictureFileName(drawn, "png"));
    onClose();
  };

  return (
    <dialog ref={dialog} className="dialog" aria-labelledby="picture-title" onClose={onClose}>
      <h2 id="picture-title">{text.picture.title}</h2>
      <p className="hint">{text.picture.hint}</p>
      <fieldset className="choices">
        <legend>{text.picture.extent}</legend>
        {pictureExtents.map((each) => (
          <label key={each}>
            <input
              type="radio"
              name="extent"
              checked={extent === each}
              onChange={() => {
                setExtent(each);
                setTooLarge(false);
              }}
            />
            {text.picture.extents[each]}
          </label>
        ))}
      </fieldset>
      <fieldset className="choices">
        <legend>{text.picture.colours}</legend>
        {colourings.map((each) => (
          <label key={each}>
            <input type="radio" name="colours" checked={colours === each} onChange={() => setColours(each)} />
            {text.picture.colourChoices[each]}
          </label>
        ))}
      </fieldset>
      {isTooLarge && (
        <p role="alert" className="late-words">
          {text.picture.tooLarge}
        </p>
      )}
      <div className="tool-group">
        <button type="button" className="button button-main" onClick={saveSvg}>
          {text.picture.saveSvg}
        </button>
        <button type="button" className="button button-main" onClick={() => void savePng()}>
          {text.picture.savePng}
        </button>
        <button type="button" className="button" onClick={onClose}>
          {text.picture.close}
        </button>
      </div>
    </dialog>
  );
}
