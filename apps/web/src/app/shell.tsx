import { useEffect, useState, type JSX, type ReactNode } from "react";
import { Link, useLocation } from "wouter";
import type { PlantListResponse } from "@formweek/contracts";
import type { Connection } from "../sync/events.ts";
import { languages, readableLanguages } from "../text/languages.ts";
import { useLanguage, useText } from "../text/text.ts";
import { chooseLanguage } from "./language.tsx";
import { chooseTheme, useTheme, type ThemeChoice } from "./theme.ts";

interface ShellProps {
  readonly plants: PlantListResponse;
  readonly plantId: string;
  readonly onPlant: (plantId: string) => void;
  readonly connection: Connection;
  readonly children: ReactNode;
}

/** What every page has: name, menu, plant, language, colours, and a word when the connection is gone. */
export function Shell({ plants, plantId, onPlant, connection, children }: ShellProps): JSX.Element {
  const { app: text, load, sheets, versions } = useText();
  const [place] = useLocation();
  const isOnline = useOnline();
  const menu = [
    { href: "/", label: text.board, isHere: place === "/" },
    { href: "/plans", label: versions.title, isHere: place === "/plans" },
    { href: "/load", label: load.title, isHere: place === "/load" },
    { href: "/orders", label: text.orders, isHere: place.startsWith("/orders") },
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
          <LanguageSelect />
          <ThemeSelect />
        </div>
      </header>
      {(connection === "lost" || !isOnline) && (
        <div className="shell-warning" role="status">
          {isOnline ? text.reconnecting : text.offline}
        </div>
      )}
      <main id="content" tabIndex={-1}>
        {children}
      </main>
    </>
  );
}

function LanguageSelect(): JSX.Element {
  const { language, text } = useLanguage();
  return (
    <select
      className="select"
      aria-label={text.app.language}
      value={language}
      onChange={(event) => chooseLanguage(event.target.value)}
    >
      {readableLanguages.map((known) => (
        <option key={known} value={known} lang={known}>
          {languages[known].name}
        </option>
      ))}
    </select>
  );
}

function ThemeSelect(): JSX.Element {
  const { app: text } = useText();
  const theme = useTheme();
  return (
    <select
      className="select"
      aria-label={text.theme}
      value={theme}
      onChange={(event) => chooseTheme(event.target.value as ThemeChoice)}
    >
      <option value="system">{text.themeSystem}</option>
      <option value="light">{text.themeLight}</option>
      <option value="dark">{text.themeDark}</option>
    </select>
  );
}

function useOnline(): boolean {
  const [isOnline, setOnline] = useState(navigator.onLine);
  useEffect(() => {
    const update = (): void => setOnline(navigator.onLine);
    window.addEventListener("online", update);
    window.addEventListener("offline", update);
    return () => {
      window.removeEventListener("online", update);
      window.removeEventListener("offline", update);
    };
  }, []);
  return isOnline;
}
