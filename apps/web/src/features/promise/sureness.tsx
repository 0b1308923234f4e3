import type { Offer, PromiseEnquiry, SurenessResponse } from "@formweek/contracts";
import type { JSX } from "react";
import type { Format } from "../../format/format.ts";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { sayChance } from "../../kernels/chance.ts";
import { useSureness } from "../../sync/promises.ts";
import { useText, type Text } from "../../text/text.ts";
import { wantedWords } from "./offer-words.ts";
import { SurenessChart } from "./sureness-chart.tsx";

interface SurenessProps {
  readonly plantId: string;
  /** Null: the offer is not of this enquiry yet. */
  readonly enquiry: PromiseEnquiry | null;
  readonly offer: Offer;
  readonly wantedAt: string | null;
}

/** How sure an offer is, as people say it; comes after the offer itself. */
export function Sureness({ plantId, enquiry, offer, wantedAt }: SurenessProps): JSX.Element {
  const { promise: text } = useText();
  const { data, error, isPlaceholderData } = useSureness(plantId, enquiry, offer.kind);
  const isOld = isPlaceholderData || enquiry === null;
  return (
    <section className="sureness" aria-label={text.sure} aria-busy={data === undefined || isOld}>
      {error !== null ? (
        <p className="hint">{text.sureFailed}</p>
      ) : data === undefined ? (
        <p className="hint">{text.sureWorking}</p>
      ) : (
        <div className={isOld ? "answer-old" : undefined}>
          <SureWords sure={data} />
          <SurenessChart sure={data} promised={offer.promised} wantedAt={wantedAt} />
        </div>
      )}
    </section>
  );
}

function SureWords({ sure }: { readonly sure: SurenessResponse }): JSX.Element {
  const text = useText();
  const { promise } = text;
  const format = useFormat();
  const at = (iso: string): string => format.instant(secondsOf(iso));
  return (
    <>
      <p>
        <strong>{chanceWords(sure.chance, promise, format)}</strong>{" "}
        {promise.chanceFor(wantedWords(sure.by, { text, format }))}
      </p>
      <p>
        {sure.at80 === null ? promise.atNever(promise.chart.at80) : promise.at80(at(sure.at80))}{" "}
        {sure.at95 === null
          ? sure.at80 === null
            ? ""
            : promise.atNever(promise.chart.at95)
          : promise.at95(at(sure.at95))}
      </p>
      <p className="hint">{promise.sureOf(format.count(sure.runs))}</p>
    </>
  );
}

function chanceWords(chance: number, text: Text["promise"], format: Format): string {
  const said = sayChance(chance);
  switch (said.kind) {
    case "sure":
      return text.chanceSure;
    case "hardly":
      return text.chanceHardly;
    case "about":
      return text.chance(format.count(said.times), format.count(said.of));
  }
}
