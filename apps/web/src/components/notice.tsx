import type { JSX, ReactNode } from "react";
import { CallError, oddAnswer, silentServer, type CallProblem } from "../sync/client.ts";
import { useNaming } from "../format/use-naming.ts";
import type { Naming } from "../text/naming.ts";
import { useText, type Text } from "../text/text.ts";
import { Icon } from "./icon.tsx";

interface NoticeProps {
  readonly title: string;
  /** The page has a heading of its own above. */
  readonly isInner?: boolean;
  readonly children?: ReactNode;
}

/** A page or panel without content yet: says so and leads on. */
export function EmptyNotice({ title, isInner = false, children }: NoticeProps): JSX.Element {
  const Heading = isInner ? "h2" : "h1";
  return (
    <div className="notice">
      <Heading>{title}</Heading>
      {children}
    </div>
  );
}

export function LoadingNotice(): JSX.Element {
  const text = useText();
  return (
    <div className="notice notice-loading" role="status">
      <span className="loading-web" aria-hidden="true" />
      {text.app.loading}
    </div>
  );
}

interface FailureNoticeProps {
  readonly cause: unknown;
  /** The page has a heading of its own above. */
  readonly isInner?: boolean;
  readonly onRetry?: () => void;
}

/** What went wrong, why, and what to do; with a way to try again. */
export function FailureNotice({ cause, isInner = false, onRetry }: FailureNoticeProps): JSX.Element {
  const Heading = isInner ? "h2" : "h1";
  const text = useText();
  const problem = problemInWords(cause, text, useNaming());
  return (
    <div className="notice notice-failure" role="alert">
      <Heading>
        <Icon name="warn" /> {problem.title}
      </Heading>
      <p>
        {problem.cause} {problem.remedy}
      </p>
      {problem.faults.length > 0 && (
        <ul>
          {problem.faults.map((fault) => (
            <li key={`${fault.path} ${fault.problem}`}>
              {fault.path === "" ? "" : `${fault.path}: `}
              {fault.problem} {fault.remedy}
            </li>
          ))}
        </ul>
      )}
      {onRetry !== undefined && (
        <button type="button" className="button" onClick={onRetry}>
          {text.app.tryAgain}
        </button>
      )}
    </div>
  );
}

/** A failed call in the reader's words. */
export function problemInWords(cause: unknown, text: Text, naming: Naming): CallProblem {
  const { app } = text;
  if (!(cause instanceof CallError)) {
    return { status: 0, code: "broken", title: app.failed, cause: "", remedy: app.crashedHint, faults: [] };
  }
  const { problem } = cause;
  if (problem.code === silentServer) {
    return {
      ...problem,
      title: app.serverSilent,
      cause: app.serverSilentCause,
      remedy: app.serverSilentRemedy,
    };
  }
  if (problem.code === oddAnswer) {
    return { ...problem, title: app.serverOdd, cause: app.serverOddCause, remedy: app.serverOddRemedy };
  }
  if (problem.edit === undefined) return { ...problem, ...text.refusals.problem(problem, naming) };
  const title = text.refusals.editTitle(problem.edit.orderId);
  return { ...problem, title, ...text.refusals.edit(problem.edit, naming) };
}
