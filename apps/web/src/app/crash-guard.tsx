import { Component, type ReactNode } from "react";
import { useText } from "../text/text.ts";

interface CrashGuardProps {
  readonly children: ReactNode;
}

/** Keeps a broken page from going blank: says so and offers a reload. */
export class CrashGuard extends Component<CrashGuardProps, { readonly isBroken: boolean }> {
  override state = { isBroken: false };

  static getDerivedStateFromError(): { readonly isBroken: boolean } {
    return { isBroken: true };
  }

  override render(): ReactNode {
    return this.state.isBroken ? <CrashNote /> : this.props.children;
  }
}

function CrashNote(): ReactNode {
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
