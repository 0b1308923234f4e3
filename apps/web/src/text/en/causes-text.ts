import type {
  ChangeSegment,
  FitRefusal,
  LateLink,
  LateOrder,
  Rate,
  UnplannedReason,
} from "@formweek/contracts";
import type { Naming } from "../naming.ts";

/**
 * What the server reports of a plan. It comes in English and, apart from words, as codes and figures: other languages
 * word those, and fall back to the English where there are none.
 */
export const causesText = {
  causes: {
    unplanned: ({ text }: Pick<UnplannedReason, "text" | "cause">, _naming: Naming): string => text,
    misfit: ({ text }: Pick<FitRefusal, "code" | "text" | "compared">, _naming: Naming): string => text,
    link: ({ text }: LateLink, _seconds: number, _naming: Naming): string => text,
    root: ({ sinceText }: LateOrder, _naming: Naming): string => sinceText,
    limit: ({ limit }: Rate, _naming: Naming): string => limit.text,
    task: ({ name }: ChangeSegment["tasks"][number]): string => name,
  },
};
