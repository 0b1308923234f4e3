import type { Plant } from "@formweek/capacity-model";
import type { PlanResponse } from "@formweek/contracts";
import type { JSX } from "react";
import { Link } from "wouter";
import { ToBoard } from "../../components/to-board.tsx";
import { EmptyNotice } from "../../components/notice.tsx";
import { useText } from "../../text/text.ts";
import { BatchDesk } from "./batch-desk.tsx";
import { EnquiryDesk } from "./enquiry-desk.tsx";

interface PromiseScreenProps {
  readonly plan: PlanResponse | null;
  readonly plant: Plant;
  readonly section: string | undefined;
}

/** When can it be ready? For who has a customer on the phone: one enquiry as it is typed, or many at once. */
export function PromiseScreen({ plan, plant, section }: PromiseScreenProps): JSX.Element {
  const { promise: text } = useText();
  if (plan === null) {
    return (
      <EmptyNotice title={text.never}>
        <p>{text.neverHint}</p>
        <ToBoard />
      </EmptyNotice>
    );
  }
  const isMany = section === "many";
  return (
    <div className="page page-promise">
      <div className="page-head">
        <h1>{text.title}</h1>
        <nav className="promise-sections" aria-label={text.sections}>
          <Link href="/promise" className="button" aria-current={isMany ? undefined : "page"}>
            {text.one}
          </Link>
          <Link href="/promise/many" className="button" aria-current={isMany ? "page" : undefined}>
            {text.many}
          </Link>
        </nav>
      </div>
      {isMany ? <BatchDesk plant={plant} /> : <EnquiryDesk plan={plan} plant={plant} />}
    </div>
  );
}
