import type { Violation } from "../result.ts";
import { auditRuleOf, type AuditCode } from "./audit-code.ts";

/** What a finding is about; what is left out does not apply. */
interface Subject {
  readonly lineId?: string | null;
  readonly orderId?: string | null;
  readonly at?: number | null;
}

/** A violation with the rule number that belongs to its code. */
export function finding(code: AuditCode, subject: Subject, text: string): Violation {
  return {
    rule: auditRuleOf[code],
    code,
    lineId: subject.lineId ?? null,
    orderId: subject.orderId ?? null,
    at: subject.at ?? null,
    text,
  };
}
