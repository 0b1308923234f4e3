import type { BatchAnswer } from "@formweek/contracts";
import type { JSX } from "react";
import { Link } from "wouter";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { emptyDraft, writeEnquiryAddress } from "../../kernels/enquiry-draft.ts";
import { wallText } from "../../kernels/wall-text.ts";
import { zoneClock, type ZoneClock } from "../../kernels/zone-clock.ts";
import { useText, type Text } from "../../text/text.ts";
import type { Format } from "../../format/format.ts";
import { wantedWords } from "./offer-words.ts";

interface BatchTableProps {
  readonly answers: readonly BatchAnswer[];
  readonly timeZone: string;
}

/** Answers row by row; each row opens as an enquiry of its own. */
export function BatchTable({ answers, timeZone }: BatchTableProps): JSX.Element {
  const { batch: text } = useText();
  const format = useFormat();
  const clock = zoneClock(timeZone);
  const hasReferences = answers.some(({ reference }) => reference !== "");
  return (
    <div>
      <div role="status">
        <h2>{text.answers(format.count(answers.length))}</h2>
      </div>
      <div className="scroller" tabIndex={0} role="region" aria-label={text.caption}>
        <table className="table">
          <thead>
            <tr>
              <th scope="col" className="number">
                {text.row}
              </th>
              {hasReferences && <th scope="col">{text.reference}</th>}
              <th scope="col">{text.product}</th>
              <th scope="col" className="number">
                {text.pieces}
              </th>
              <th scope="col">{text.wanted}</th>
              <th scope="col">{text.ready}</th>
              <th scope="col">{text.verdict}</th>
              <th scope="col">{text.line}</th>
              <th scope="col">{text.open}</th>
            </tr>
          </thead>
          <tbody>
            {answers.map((answer) => (
              <AnswerRow key={answer.row} answer={answer} clock={clock} hasReference={hasReferences} />
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}

interface AnswerRowProps {
  readonly answer: BatchAnswer;
  readonly clock: ZoneClock;
  readonly hasReference: boolean;
}

function AnswerRow({ answer, clock, hasReference }: AnswerRowProps): JSX.Element {
  const all = useText();
  const { batch: text } = all;
  const format = useFormat();
  const { enquiry, outcome } = answer;
  const said = sayOutcome(answer, text, format);
  return (
    <tr className={said.isBad ? "late-row" : undefined}>
      <th scope="row" className="number">
        {answer.row}
      </th>
      {hasReference && <td>{answer.reference}</td>}
      <td>{enquiry.productName}</td>
      <td className="number">{format.count(enquiry.pieces)}</td>
      <td>{enquiry.wantedAt === null ? text.soon : wantedWords(enquiry.wantedAt, { text: all, format })}</td>
      <td>{said.ready === null ? "" : <strong>{format.instant(said.ready)}</strong>}</td>
      <td className={said.isBad ? "late-words" : undefined}>{said.verdict}</td>
      <td>
        {outcome.status === "promised" ? outcome.offer.parts.map(({ lineName }) => lineName).join(", ") : ""}
      </td>
      <td>
        <Link href={addressOf(answer, clock)} aria-label={text.openRow(format.count(answer.row))}>
          {text.open}
        </Link>
      </td>
    </tr>
  );
}

interface SaidOutcome {
  readonly ready: number | null;
  readonly verdict: string;
  readonly isBad: boolean;
}

function sayOutcome({ enquiry, outcome }: BatchAnswer, text: Text["batch"], format: Format): SaidOutcome {
  switch (outcome.status) {
    case "impossible":
      return { ready: null, verdict: text.impossible, isBad: true };
    case "from stock":
      return { ready: secondsOf(outcome.promised), verdict: text.stock, isBad: false };
    case "promised": {
      const ready = secondsOf(outcome.offer.promised);
      if (enquiry.wantedAt === null) return { ready, verdict: text.earliest, isBad: false };
      const slack = secondsOf(enquiry.wantedAt) - ready;
      const span = format.span(slack);
      return { ready, verdict: slack < 0 ? text.late(span) : text.inTime(span), isBad: slack < 0 };
    }
  }
}

/** The page of one enquiry that asks the same. */
function addressOf({ enquiry }: BatchAnswer, clock: ZoneClock): string {
  const wanted = enquiry.wantedAt === null ? null : secondsOf(enquiry.wantedAt);
  // a day alone is its end: the midnight after it
  const isWholeDay = wanted !== null && wallText(clock, wanted).endsWith("T00:00");
  const shown = wanted === null ? "" : wallText(clock, isWholeDay ? wanted - 1 : wanted);
  const draft = {
    ...emptyDraft,
    product: enquiry.productId,
    pieces: `${enquiry.pieces}`,
    day: shown.slice(0, 10),
    time: isWholeDay ? "" : shown.slice(11),
    partsAllowed: enquiry.partsAllowed,
  };
  return `/promise?${writeEnquiryAddress(draft, new URLSearchParams()).toString()}`;
}
