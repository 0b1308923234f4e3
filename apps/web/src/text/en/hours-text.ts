/** Words of the plant's hours as a planner changes them: lines closed for a spell, shifts added on a day. */
export const hoursText = {
  hours: {
    steps: {
      "close line": (line: string, reason: string) => `Closed ${line} (${reason})`,
      "open line": (line: string) => `Opened ${line} again`,
      "add shift": (shift: string, day: string) => `Added shift ${shift} on ${day}`,
      "take shift back": (shift: string, day: string) => `Took back shift ${shift} of ${day}`,
    },
  },
};
