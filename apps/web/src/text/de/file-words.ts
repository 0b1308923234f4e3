import type { FileFaultCode } from "@formweek/contracts";

const inParts = "In Teilen laden.";
const saveAgain = "Im Tabellenprogramm öffnen und als .xlsx neu speichern.";

/** Why a file cannot be read; the sentence begins with the file. */
export const files: Readonly<Record<FileFaultCode, readonly [problem: string, remedy: string]>> = {
  "unknown-format": ["Das ist weder CSV noch eine Arbeitsmappe.", "Als .xlsx oder .csv speichern."],
  "too-large": ["Die Datei ist zu groß.", inParts],
  "unpacks-too-large": [
    "Die Datei ist entpackt zu groß oder reicht zu weit nach rechts oder unten.",
    "Leere Zeilen, Spalten und nicht benötigte Blätter löschen, oder in Teilen laden.",
  ],
  "too-many-rows": ["Die Tabelle hat zu viele Zeilen.", inParts],
  "too-many-columns": ["Die Tabelle hat zu viele Spalten.", "Nicht benötigte Spalten weglassen."],
  "too-many-tables": ["Die Datei hat zu viele Blätter.", "Nicht benötigte Blätter weglassen."],
  "cell-too-long": ["Eine Zelle enthält zu viele Zeichen.", "Sie kürzen."],
  "wrong-encoding": ["Die Zeichen sind nicht lesbar.", "Als CSV in UTF-8 speichern."],
  "broken-quotes": [
    "Ein Anführungszeichen ist nicht geschlossen.",
    "Es schließen, oder eines, das zum Text gehört, verdoppeln.",
  ],
  "broken-file": ["Die Datei ist beschädigt oder keine Arbeitsmappe.", saveAgain],
  "password-protected": [
    "Die Datei ist mit einem Kennwort geschützt oder im alten Format .xls.",
    "Als .xlsx ohne Kennwort speichern.",
  ],
  "empty-file": ["Die Datei enthält nichts.", "Die Datei wählen, in der die Tabelle steht."],
};
