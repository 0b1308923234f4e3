import { Component, useState, type JSX, type ReactNode } from "react";
import { MissingPart, reloadForPart, wasReloadedForPart } from "../sync/missing-part.ts";
import { useText } from "../text/text.ts";

interface CrashGuardProps {
  /** What is shown: something else is given a chance of its own. */
  readonly place?: string;
  readonly children: ReactNode;
}

interface Broken {
  readonly cause: unknown;
}

/** Keeps a broken page from going blank: says so and offers a reload. */
export class CrashGuard extends Component<CrashGuardProps, { readonly broken: Broken | null }> {
  override state: { readonly broken: Broken | null } = { broken: null };

  static getDerivedStateFromError(cause: unknown): { readonly broken: Broken } {
    return { broken: { cause } };
  }

  override componentDidUpdate({ place }: CrashGuardProps): void {
    if (place !== this.props.place && this.state.broken !== null) this.setState({ broken: null });
  }

  override render(): ReactNode {
    const { broken } = this.state;
    if (broken === null) return this.props.children;
    return broken.cause instanceof MissingPart ? <MissingPartNote /> : <CrashNote />;
  }
}

function CrashNote(): JSX.Element {
  const { app: text } = useText();
  return (
    <div className="notice notice-failure" role="alert">
      <h1>{text.crashed}</h1>
      <p>{text.crashedHint}</p>
      <button type="button" className="button" onClick={() => window.location.reload()}>
        {text.reload}
      </button>
    </div>
  );
}

/** A reload brings the parts of a newer server; it is offered once, and only while a server is there to answer it. */
function MissingPartNote(): JSX.Element {
  const { app: text } = useText();
  const [isSilent, setSilent] = useState(false);
  const reload = async (): Promise<void> => setSilent(!(await reloadForPart()));
  return (
    <div className="notice notice-failure" role="alert">
      <h1>{text.partMissing}</h1>
      {wasReloadedForPart() ? (
        <p>{text.partStillMissing}</p>
      ) : (
        <>
          <p>{text.partMissingHint}</p>
          <button type="button" className="button" onClick={() => void reload()}>
            {text.reload}
          </button>
          {isSilent && <p>{text.partServerSilent}</p>}
        </>
      )}
    </div>
  );
}
