/** What can be wrong with one value of a request or a file, apart from words. */
export type ValueFault =
  | { readonly kind: "value missing" }
  | { readonly kind: "value of wrong kind"; readonly expected: string }
  | {
      readonly kind: "value too small";
      readonly of: Sized;
      readonly least: number;
      readonly including: boolean;
    }
  | {
      readonly kind: "value too large";
      readonly of: Sized;
      readonly most: number;
      readonly including: boolean;
    }
  | { readonly kind: "value not listed"; readonly listed: readonly string[] }
  | { readonly kind: "fields unknown"; readonly fields: readonly string[] }
  | { readonly kind: "value not allowed" };

/** What a least or most counts: the number itself, letters of a text, entries of a list. */
type Sized = "number" | "letters" | "entries";

/** What a schema refuses, as its validator says it (the issues of zod): the code and what goes with it. */
export type SchemaIssue = Readonly<Record<string, unknown>>;

/** The fault apart from words. `isMissing`: nothing came where the schema wants a value. */
export function valueFault(issue: SchemaIssue, isMissing = false): ValueFault {
  if (isMissing) return { kind: "value missing" };
  const { code, minimum, maximum } = issue;
  const including = issue["inclusive"] !== false;
  if (code === "invalid_type" && typeof issue["expected"] === "string")
    return { kind: "value of wrong kind", expected: issue["expected"] };
  if (code === "too_small" && typeof minimum === "number")
    return { kind: "value too small", of: sizedBy(issue["origin"]), least: minimum, including };
  if (code === "too_big" && typeof maximum === "number")
    return { kind: "value too large", of: sizedBy(issue["origin"]), most: maximum, including };
  if (code === "invalid_value" && Array.isArray(issue["values"]))
    return { kind: "value not listed", listed: issue["values"].map(String) };
  if (code === "unrecognized_keys" && Array.isArray(issue["keys"]))
    return { kind: "fields unknown", fields: issue["keys"].map(String) };
  return { kind: "value not allowed" };
}

function sizedBy(origin: unknown): Sized {
  if (origin === "string") return "letters";
  return origin === "array" || origin === "set" ? "entries" : "number";
}
