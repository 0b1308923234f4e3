import {
  LoadFindingsResponse,
  LoadOrdersResponse,
  LoadResponse,
  BucketSize,
  ResourceKind,
  type TableQuery,
} from "@formweek/contracts";
import { keepPreviousData, useQuery, type UseQueryResult } from "@tanstack/react-query";
import { call } from "./client.ts";
import { keys } from "./queries.ts";

/** Kinds of resource and steps of time, in the order in which they are offered. */
export const resourceKinds = ResourceKind.options;
export const bucketSizes = BucketSize.options;

/** Which load is looked at. */
export interface LoadView {
  readonly kind: ResourceKind;
  readonly bucket: BucketSize;
  /** Local date; null: from the planning start. */
  readonly from: string | null;
}

/** A resource in a stretch of time; instants as the server writes them. */
export interface LoadCell {
  readonly kind: ResourceKind;
  readonly id: string;
  readonly start: string;
  readonly end: string;
}

const at = (plantId: string, rest: string): string => `/plants/${encodeURIComponent(plantId)}/load${rest}`;

const words = ({ kind, bucket, from }: LoadView): string =>
  new URLSearchParams({ kind, bucket, ...(from === null ? {} : { from }) }).toString();

/** Load against capacity; the view before stays until the next is there. */
export function useLoad(plantId: string, view: LoadView): UseQueryResult<LoadResponse> {
  return useQuery({
    queryKey: [...keys.load(plantId), words(view)],
    placeholderData: keepPreviousData,
    queryFn: ({ signal }) => call({ path: at(plantId, `?${words(view)}`), answer: LoadResponse, signal }),
  });
}

/** The orders behind one cell; null asks for none. */
export function useLoadOrders(plantId: string, cell: LoadCell | null): UseQueryResult<LoadOrdersResponse> {
  const asked = new URLSearchParams({ ...cell }).toString();
  return useQuery({
    queryKey: [...keys.load(plantId), "orders", asked],
    enabled: cell !== null,
    queryFn: ({ signal }) =>
      call({ path: at(plantId, `/orders?${asked}`), answer: LoadOrdersResponse, signal }),
  });
}

/** Bottleneck and warnings. */
export function useLoadFindings(plantId: string): UseQueryResult<LoadFindingsResponse> {
  return useQuery({
    queryKey: [...keys.load(plantId), "findings"],
    queryFn: ({ signal }) => call({ path: at(plantId, "/findings"), answer: LoadFindingsResponse, signal }),
  });
}

/** Address of the load shown as a table. */
export function loadTableAddress(plantId: string, view: LoadView, { format, language }: TableQuery): string {
  return `/api${at(plantId, `/table?${words(view)}&format=${format}&language=${language}`)}`;
}
