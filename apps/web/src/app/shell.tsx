import { useEffect, type JSX, type ReactNode } from "react";
import { Link, useLocation } from "wouter";
import type { PlantListResponse } from "@formweek/contracts";
import type { Connection } from "../sync/events.ts";
import { useText } from "../text/text.ts";
import { ConnectionBanner } from "./connection-banner.tsx";
import { SettingsMenu } from "./settings-menu.tsx";

interface ShellProps {
  readonly plants: PlantListResponse;
  readonly plantId: string;
  readonly onPlant: (plantId: string) => void;
  readonly connection: Connection;
  readonly children: ReactNode;
}

/** What every page has: name, menu, plant, the reader's settings, and a word when the connection is gone. */
export function Shell({ plants, plantId, onPlant, connection, children }: ShellProps): JSX.Element {
  const { app: text, load, promise, sheets, versions, whatIf } = useText();
  const [place] = useLocation();
  const menu = [
    { href: "/", label: text.board, isHere: place === "/" },
    { href: "/plans", label: versions.title, isHere: place === "/plans" },
    { href: "/load", label: load.title, isHere: place === "/load" },
    { href: "/what-if", label: whatIf.title, isHere: place === "/what-if" },
    { href: "/orders", label: text.orders, isHere: place.startsWith("/orders") },
    { href: "/promise", label: promise.title, isHere: place.startsWith("/promise") },
    { href: "/plant", label: text.plant, isHere: place.startsWith("/plant") },
  ];
  const here = menu.find((item) => item.isHere)?.label ?? (place === "/sheets" ? sheets.title : undefined);
  useEffect(() => {
    document.title = here === undefined ? text.name : `${here} · ${text.name}`;
  }, [here, text.name]);
  const plant = plants.find((known) => known.id === plantId);
  return (
    <>
      <a className="skip button" href="#content">
        {text.skip}
      </a>
      <header className="shell-bar">
        <span className="brand" aria-label={text.name} translate="no">
          Form<b>week</b>
        </span>
        <nav className="shell-menu" aria-label={text.mainMenu}>
          {menu.map((item) => (
            <Link key={item.href} href={item.href} aria-current={item.isHere ? "page" : undefined}>
              {item.label}
            </Link>
          ))}
        </nav>
        <div className="shell-end">
          {plants.length > 1 ? (
            <select
              className="select"
              aria-label={text.plantChoice}
              value={plantId}
              onChange={(event) => onPlant(event.target.value)}
            >
              {plants.map((known) => (
                <option key={known.id} value={known.id}>
                  {known.name}
                </option>
              ))}
            </select>
          ) : (
            <span className="plant-name">{plant?.name}</span>
          )}
          <SettingsMenu />
        </div>
      </header>
      <ConnectionBanner connection={connection} />
      <main id="content" tabIndex={-1}>
        {children}
      </main>
    </>
  );
}
