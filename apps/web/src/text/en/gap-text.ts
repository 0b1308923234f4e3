/** Words of the free time of a line: what it waits for. */
export const gapText = {
  gap: {
    title: "What it waits for",
    working: "Being worked out…",
    notKnown: "Plant, orders or held orders have changed since this plan was made. Plan again to see it.",
    next: "Comes next:",
    until: (length: string, until: string) => `${length}, until ${until}`,
    besides: "It would wait for this too, though not as long:",
    besideUntil: (what: string, until: string) => `${what} Until ${until}.`,
    nothingMore: "Nothing more is planned on this line.",
    nothingFits: "No order that begins later fits it.",
    fitHere: (n: number) =>
      n === 1
        ? "1 order that fits it begins later on another line or is not planned:"
        : `${n} orders that fit it begin later on other lines or are not planned, the latest first:`,
    before: (length: string) => `${length} free before it: why?`,
    after: (length: string) => `${length} free after it: why?`,
    causes: {
      "line closed": "The line is closed.",
      "no operators": "Operators are short: other lines have them.",
      "stop too near":
        "The line closes soon: warming up again after the stop would take longer than the run before it.",
      "other work first": "Nothing stands against it here; the plan has other work before it.",
      "line free": "The line is still taken by work from before the plan.",
      "mould arrives": "The mould is not in the plant yet.",
      "setters off": (team: string) => `${team} is not on shift.`,
      "setters busy": (team: string, line: string) => `${team} is at a change on ${line}.`,
      "trolley busy": (trolley: string, line: string) => `${trolley} is at a change on ${line}.`,
      "mould elsewhere": (mould: string, line: string) => `${mould} is on ${line}.`,
      "mould for order": (mould: string, line: string, order: string) =>
        `${mould} is on ${line}, for order ${order}.`,
      "mould carried": (mould: string) => `${mould} is on its way here.`,
      "mould out of service": (mould: string) => `${mould} is out of service.`,
      "sheet arrival": (sheet: string) => `The sheet ${sheet} has not arrived.`,
      "earliest start": (order: string) => `Order ${order} may not start earlier.`,
      "pinned start": (order: string) => `Order ${order} is held at its start.`,
    },
  },
};
