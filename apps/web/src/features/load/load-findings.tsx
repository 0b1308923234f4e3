import { useState, type JSX, type ReactNode } from "react";
import type { Plant } from "@formweek/capacity-model";
import type { LoadFinding, LoadFindingsResponse } from "@formweek/contracts";
import { Icon } from "../../components/icon.tsx";
import { FailureNotice, LoadingNotice } from "../../components/notice.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import { useLoadFindings } from "../../sync/load.ts";
import { useText } from "../../text/text.ts";
import { bucketName, resourceName } from "./load-words.ts";
import { ReliefList } from "./relief-list.tsx";
import type { LoadAddress } from "./use-load-address.ts";

interface FindingsProps {
  readonly plant: Plant;
  readonly onShow: (changes: Partial<LoadAddress>) => void;
}

/** Warnings that stand open before the rest is asked for. */
const FIRST_WARNINGS = 3;

/** The bottleneck with its evidence, and what else the plant manager has to know. */
export function LoadFindings({ plant, onShow }: FindingsProps): JSX.Element {
  const findings = useLoadFindings(plant.id);
  const { data } = findings;
  if (data !== undefined)
    return (
      <div className="load-findings">
        <BottleneckCard plant={plant} bottleneck={data.bottleneck} onShow={onShow} />
        <Warnings plant={plant} findings={data} onShow={onShow} />
      </div>
    );
  return findings.error === null ? (
    <LoadingNotice />
  ) : (
    <FailureNotice isInner cause={findings.error} onRetry={() => void findings.refetch()} />
  );
}

interface BottleneckCardProps extends FindingsProps {
  readonly bottleneck: LoadFindingsResponse["bottleneck"];
}

function BottleneckCard({ plant, bottleneck, onShow }: BottleneckCardProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const { load } = text;
  const orders = bottleneck?.orders.slice(0, 5).map(({ orderId }) => orderId) ?? [];
  const above = bottleneck?.weeks.filter(({ share }) => share === null || share > 0.9) ?? [];
  const weeks = above.slice(0, 6).map((week) => bucketName(week, text, format));
  return (
    <section className="load-card" aria-labelledby="bottleneck-title">
      <h2 id="bottleneck-title">{load.bottleneck}</h2>
      {bottleneck === null ? (
        <p>{load.nothingLoaded}</p>
      ) : (
        <FindingWords plant={plant} finding={bottleneck} onShow={onShow}>
          {above.length > 1 && (
            <p>{load.weeksAbove(above.length > weeks.length ? `${weeks.join("; ")} …` : weeks.join("; "))}</p>
          )}
          <p>{load.behind(orders.join(", "), bottleneck.orderCount - orders.length)}</p>
        </FindingWords>
      )}
    </section>
  );
}

interface FindingWordsProps extends FindingsProps {
  readonly finding: LoadFinding;
  readonly children?: ReactNode;
}

/** One resource: how full, when, by how much, and what would help. */
function FindingWords({ plant, finding, onShow, children }: FindingWordsProps): JSX.Element | null {
  const text = useText();
  const format = useFormat();
  const { load } = text;
  const week = finding.weeks[finding.worst];
  if (week === undefined) return null;
  const { kind, id } = finding;
  const share = week.share === null ? load.noHours : format.percent(week.share);
  const name = resourceName(plant, kind, id);
  const hours = (seconds: number): string => format.hours(seconds);
  return (
    <div className="finding">
      <p>
        <span className="tag">{load.one[kind]}</span>{" "}
        <b>{load.bottleneckIs(name, share, bucketName(week, text, format))}</b>{" "}
        {finding.beyondSeconds >= 60 && load.beyond(hours(finding.beyondSeconds))}{" "}
        {load.needs(hours(week.neededSeconds), hours(week.attainableSeconds))} ({load.basis[week.basis]}){" "}
        <button
          type="button"
          className="button-link"
          onClick={() => onShow({ kind, bucket: "week", from: null, id, at: week.start })}
        >
          {load.show}
          <span className="unseen"> {name}</span>
        </button>
      </p>
      {children}
      <ReliefList plant={plant} reliefs={finding.reliefs} />
    </div>
  );
}

interface WarningsProps extends FindingsProps {
  readonly findings: LoadFindingsResponse;
}

function Warnings({ plant, findings, onShow }: WarningsProps): JSX.Element {
  const { load: text } = useText();
  const [isOpen, setOpen] = useState(false);
  const warnings = [
    ...findings.sheets.map((sheet) => ({
      key: `sheet ${sheet.sheetId}`,
      words: <SheetWords sheet={sheet} />,
    })),
    ...findings.resources.map((finding) => ({
      key: `${finding.kind} ${finding.id}`,
      words: <FindingWords plant={plant} finding={finding} onShow={onShow} />,
    })),
  ];
  const shown = isOpen ? warnings : warnings.slice(0, FIRST_WARNINGS);
  return (
    <section className="load-card" aria-labelledby="warnings-title">
      <h2 id="warnings-title">
        {text.warnings}
        {warnings.length > 0 && ` (${warnings.length})`}
      </h2>
      {warnings.length === 0 ? (
        <p>{text.noWarnings}</p>
      ) : (
        <ul className="warning-list">
          {shown.map(({ key, words }) => (
            <li key={key}>
              <Icon name="warn" />
              {words}
            </li>
          ))}
        </ul>
      )}
      {warnings.length > FIRST_WARNINGS && (
        <button type="button" className="button" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {isOpen ? text.fewer : text.moreWarnings(warnings.length - FIRST_WARNINGS)}
        </button>
      )}
    </section>
  );
}

function SheetWords({ sheet }: { readonly sheet: LoadFindingsResponse["sheets"][number] }): JSX.Element {
  const { load: text, units } = useText();
  const format = useFormat();
  const naming = useNaming();
  const { sheetId, at, missingKg, nextArrivalAt } = sheet;
  return (
    <p>
      <b>{text.sheetOut(naming.sheet(sheetId), naming.moment(at), units.kg(format.count(missingKg)))}</b>{" "}
      {nextArrivalAt === null ? text.sheetNoNext : text.sheetNext(naming.moment(nextArrivalAt))}
    </p>
  );
}
