import type { JSX } from "react";
import { Link } from "wouter";
import type { Plant } from "@formweek/capacity-model";
import type { LoadResponse } from "@formweek/contracts";
import { EmptyNotice, FailureNotice, LoadingNotice } from "../../components/notice.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useLoad } from "../../sync/load.ts";
import { useText } from "../../text/text.ts";
import { HeatMap } from "./heat-map.tsx";
import { LoadBars } from "./load-bars.tsx";
import { LoadControls } from "./load-controls.tsx";
import { LoadFindings } from "./load-findings.tsx";
import { LoadOrders } from "./load-orders.tsx";
import { resourceName } from "./load-words.ts";
import { useLoadAddress, type LoadAddress } from "./use-load-address.ts";

/** Load against capacity: what is full, when, by which orders, and what would help. */
export function LoadScreen({ plant }: { readonly plant: Plant }): JSX.Element {
  const { load: text } = useText();
  const [shown, show] = useLoadAddress();
  const load = useLoad(plant.id, shown);
  const { data } = load;
  return (
    <div className="page page-load">
      <div className="page-head">
        <h1>{text.title}</h1>
        {data !== undefined && <Standing load={data} />}
      </div>
      {data !== undefined && isNothing(data) ? (
        <EmptyNotice isInner title={text.empty}>
          <p>{text.emptyHint}</p>
          <Link href="/orders" className="button button-main">
            {text.toOrders}
          </Link>
        </EmptyNotice>
      ) : (
        <>
          <LoadFindings plant={plant} onShow={show} />
          <LoadControls plantId={plant.id} shown={shown} load={data ?? null} onShow={show} />
          {data === undefined &&
            (load.error === null ? (
              <LoadingNotice />
            ) : (
              <FailureNotice isInner cause={load.error} onRetry={() => void load.refetch()} />
            ))}
          {data !== undefined && (
            <div className={load.isPlaceholderData ? "load-body load-old" : "load-body"}>
              <LoadBody plant={plant} load={data} shown={shown} onShow={show} />
            </div>
          )}
        </>
      )}
    </div>
  );
}

/** Never planned, and no order to lay roughly. */
const isNothing = ({ planId, roughOrders, unplacedCount }: LoadResponse): boolean =>
  planId === null && roughOrders === 0 && unplacedCount === 0;

function Standing({ load }: { readonly load: LoadResponse }): JSX.Element {
  const { load: text } = useText();
  const format = useFormat();
  const { planId, plannedUntil } = load;
  return (
    <span className="hint">
      {planId === null || plannedUntil === null ? (
        <>
          {text.notPlanned} <Link href="/">{text.toBoard}</Link>
        </>
      ) : (
        text.planned(format.instant(Date.parse(plannedUntil) / 1000))
      )}
    </span>
  );
}

interface LoadBodyProps {
  readonly plant: Plant;
  readonly load: LoadResponse;
  readonly shown: LoadAddress;
  readonly onShow: (changes: Partial<LoadAddress>) => void;
}

function LoadBody({ plant, load, shown, onShow }: LoadBodyProps): JSX.Element {
  const { load: text } = useText();
  const { kind, at } = shown;
  const nameOf = (id: string): string => resourceName(plant, kind, id);
  const resource = load.resources.find(({ id }) => id === shown.id) ?? load.resources[0];
  const bucket = load.buckets.find(({ start }) => start === at) ?? null;
  if (resource === undefined) return <EmptyNotice isInner title={text.noResources} />;
  return (
    <>
      <HeatMap
        key={`${kind} ${shown.bucket} ${load.buckets[0]?.start ?? ""}`}
        load={load}
        nameOf={nameOf}
        chosen={{ id: resource.id, at }}
        onChoose={onShow}
      />
      <Legend load={load} />
      <div className="load-detail">
        <LoadBars
          load={load}
          resource={resource}
          name={nameOf(resource.id)}
          at={at}
          onChoose={(start) => onShow({ id: resource.id, at: start })}
        />
        <LoadOrders plant={plant} kind={kind} id={resource.id} bucket={bucket} />
      </div>
    </>
  );
}

const LEVELS = ["free", "low", "middle", "high", "full", "over", "shut"] as const;

function Legend({ load }: { readonly load: LoadResponse }): JSX.Element {
  const { load: text } = useText();
  const format = useFormat();
  const { roughOrders, unplaced, unplacedCount } = load;
  return (
    <div className="load-notes">
      <ul className="load-legend" aria-label={text.legend}>
        {LEVELS.map((level) => (
          <li key={level}>
            <span className={`swatch heat-${level}`} aria-hidden="true" />
            {text.levels[level]}
          </li>
        ))}
      </ul>
      {roughOrders > 0 && <p className="hint">{text.rough(format.count(roughOrders), roughOrders)}</p>}
      {unplacedCount > 0 && (
        <p className="hint">
          {text.unplaced(format.count(unplacedCount), unplacedCount)}{" "}
          {unplaced
            .slice(0, 5)
            .map(({ orderId, reason }) => `${orderId} (${text.unplacedWhy[reason]})`)
            .join(", ")}
          {unplacedCount > 5 && " …"}
        </p>
      )}
    </div>
  );
}
