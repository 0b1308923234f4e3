import type { JSX, ReactNode } from "react";
import { useText } from "../text/text.ts";
import { Disclosure } from "./disclosure.tsx";
import { Icon } from "./icon.tsx";

/** What can be taken from a page: files, pictures, sheets to print. */
export function TakeAway({ children }: { readonly children: ReactNode }): JSX.Element {
  const { app: text } = useText();
  return (
    <Disclosure
      side="right"
      panelClass="popover menu"
      label={
        <>
          <Icon name="export" /> {text.takeAway}
        </>
      }
    >
      {children}
    </Disclosure>
  );
}
