import type { Text } from "../en/en.ts";
import { bookText } from "./book-text.ts";
import { batchText } from "./batch-text.ts";
import { boardText } from "./board-text.ts";
import { causesText } from "./causes-text.ts";
import { editText } from "./edit-text.ts";
import { holdsText } from "./holds-text.ts";
import { hoursText } from "./hours-text.ts";
import { lookText } from "./look-text.ts";
import { gapText } from "./gap-text.ts";
import { loadText } from "./load-text.ts";
import { ordersText } from "./orders-text.ts";
import { pictureText } from "./picture-text.ts";
import { plantText } from "./plant-text.ts";
import { promiseText } from "./promise-text.ts";
import { refusalsText } from "./refusals-text.ts";
import { compareText } from "./compare-text.ts";
import { remedyText } from "./remedy-text.ts";
import { sheetsText } from "./sheets-text.ts";
import { versionsText } from "./versions-text.ts";
import { whatIfText } from "./what-if-text.ts";
import { shellText } from "./shell-text.ts";

/** Every word of the app in German: trade words of the thermoforming shop, orders to the reader in the infinitive. */
export const de: Text = {
  ...shellText,
  ...boardText,
  ...editText,
  ...hoursText,
  ...gapText,
  ...lookText,
  ...loadText,
  ...ordersText,
  ...bookText,
  ...pictureText,
  ...plantText,
  ...remedyText,
  ...sheetsText,
  ...causesText,
  ...refusalsText,
  ...compareText,
  ...versionsText,
  ...promiseText,
  ...holdsText,
  ...batchText,
  ...whatIfText,
};
