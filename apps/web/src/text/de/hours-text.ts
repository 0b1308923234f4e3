import type { hoursText as english } from "../en/hours-text.ts";

/** Words of the plant's hours as a planner changes them: lines closed for a spell, shifts added on a day. */
export const hoursText: typeof english = {
  hours: {
    steps: {
      "close line": (line, reason) => `${line} gesperrt (${reason})`,
      "open line": (line) => `${line} wieder geöffnet`,
      "add shift": (shift, day) => `Schicht ${shift} am ${day} hinzugefügt`,
      "take shift back": (shift, day) => `Schicht ${shift} vom ${day} zurückgenommen`,
    },
  },
};
