import { useId, type JSX } from "react";
import { Disclosure } from "../components/disclosure.tsx";
import { Icon } from "../components/icon.tsx";
import { densityChoice } from "../sync/density.ts";
import type { KeptChoice } from "../sync/kept-choice.ts";
import { useKeptChoice } from "../sync/use-kept-choice.ts";
import { cleanName, longestName, plannerName } from "../sync/planner-name.ts";
import { languages, readableLanguages } from "../text/languages.ts";
import { useLanguage, useText } from "../text/text.ts";
import { languageChoice } from "./language.tsx";
import { themeChoice } from "./theme.ts";

/** What the reader chooses for this browser: language, colours and how close things stand. */
export function SettingsMenu(): JSX.Element {
  const { app: text } = useText();
  return (
    <Disclosure
      side="right"
      panelClass="popover settings"
      label={
        <>
          <Icon name="settings" /> <span className="shell-word">{text.settings}</span>
        </>
      }
    >
      <LanguageSelect />
      <KeptSelect label={text.theme} choice={themeChoice} words={text.themes} />
      <KeptSelect label={text.density} choice={densityChoice} words={text.densities} />
      <NameField />
      <p className="hint">{text.settingsHint}</p>
    </Disclosure>
  );
}

function LanguageSelect(): JSX.Element {
  const { language, text } = useLanguage();
  const id = useId();
  return (
    <>
      <label htmlFor={id}>{text.app.language}</label>
      <select
        id={id}
        className="select"
        value={language}
        onChange={(event) => languageChoice.choose(event.target.value)}
      >
        {readableLanguages.map((known) => (
          <option key={known} value={known} lang={known}>
            {languages[known].name}
          </option>
        ))}
      </select>
    </>
  );
}

function NameField(): JSX.Element {
  const { app: text } = useText();
  const id = useId();
  return (
    <>
      <label htmlFor={id}>{text.yourName}</label>
      <input
        id={id}
        className="field"
        defaultValue={plannerName.read()}
        maxLength={longestName}
        autoComplete="nickname"
        aria-describedby={`${id}-hint`}
        onChange={({ target }) => plannerName.choose(cleanName(target.value))}
        onBlur={({ target }) => {
          target.value = plannerName.read();
        }}
      />
      <p className="hint" id={`${id}-hint`}>
        {text.yourNameHint}
      </p>
    </>
  );
}

interface KeptSelectProps<Choice extends string> {
  readonly label: string;
  readonly choice: KeptChoice<Choice>;
  readonly words: Readonly<Record<Choice, string>>;
}

function KeptSelect<Choice extends string>({ label, choice, words }: KeptSelectProps<Choice>): JSX.Element {
  const id = useId();
  const value = useKeptChoice(choice);
  const known = Object.keys(words) as Choice[];
  return (
    <>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        className="select"
        value={value}
        onChange={(event) => choice.choose(event.target.value as Choice)}
      >
        {known.map((each) => (
          <option key={each} value={each}>
            {words[each]}
          </option>
        ))}
      </select>
    </>
  );
}
