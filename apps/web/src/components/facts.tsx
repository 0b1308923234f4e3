import type { JSX, ReactNode } from "react";

export interface Fact {
  readonly name: string;
  readonly value: ReactNode;
  readonly tone?: "late";
}

/** Names and values in two columns. */
export function Facts({ facts }: { readonly facts: readonly Fact[] }): JSX.Element {
  return (
    <dl className="facts">
      {facts.map((fact) => (
        <div key={fact.name} className={fact.tone === "late" ? "fact fact-late" : "fact"}>
          <dt>{fact.name}</dt>
          <dd>{fact.value}</dd>
        </div>
      ))}
    </dl>
  );
}
