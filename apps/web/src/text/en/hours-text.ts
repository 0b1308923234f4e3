/** Words of the plant's hours as a planner changes them: lines closed for a spell, shifts added on a day. */
export const hoursText = {
  hours: {
    steps: {
      "close line": (line: string, reason: string) => `Closed ${line} (${reason})`,
      "open line": (line: string) => `Opened ${line} again`,
      "add shift": (shift: string, day: string) => `Added shift ${shift} on ${day}`,
      "take shift back": (shift: string, day: string) => `Took back shift ${shift} of ${day}`,
    },
    extraShift: (name: string) => `+ ${name}`,
    title: "Hours of the line",
    runs: "Runs",
    changes: "Is changed",
    stands: "Open, unused",
    closed: "Closed",
    hint: "The plan is timed again at once: lots keep their line and order, what finds no room is unplanned.",
    leftOut: (n: number, count: string) =>
      n === 1 ? "1 order is still left out." : `${count} orders are still left out.`,
    leftOutHint:
      "There is more time now, but the plan was only timed again; planning again puts in what fits.",
    planThemIn: "Plan again, with them",
    close: "Close for a spell…",
    add: "Add a shift…",
    openAgain: "Open again",
    takeBack: "Take back",
    added: "Added shifts",
    leave: "Leave as it is",
    closeTitle: "Close a line for a spell",
    closeNow: "Close the line",
    closeHint: "A closure of one line wins over every shift. Times are the plant's.",
    line: "Line",
    from: "From",
    to: "To",
    reason: "Reason",
    reasonHint: "Oven repair",
    hits: (orders: string) => `Runs there then: ${orders}.`,
    hitsNothing: "Nothing runs there then.",
    addTitle: "Add a shift on a day",
    addNow: "Add the shift",
    shift: "Shift",
    shiftName: "Added shift",
    pattern: (name: string, start: string, end: string) => `${name}, ${start} to ${end}`,
    otherHours: "Other hours",
    day: "Day",
    lines: "Lines that work it",
    people: "People who come",
    teamThere: (team: string) => `${team} (works then anyway)`,
    headsMore: (pool: string, needed: string) =>
      `${pool}: heads besides those there; the lines need ${needed}`,
    cautionTitle: "Long hours tire people",
    caution: "Check rest and weekly hours of everyone who comes, before the shift is fixed.",
    cautionLong:
      "That is long if the same people work all of it. Plan other people or a rest; tired people near hot tooling and knives get hurt.",
    longFor: (name: string, stretch: string, week: string, rest: string | null) =>
      rest === null
        ? `${name}: ${stretch} on end, ${week} in that week.`
        : `${name}: ${stretch} on end, ${rest} of rest beside it, ${week} in that week.`,
    longLine: (name: string, week: string) => `${name}: ${week} in that week, which takes several crews.`,
    cautionSource:
      "Directive 2003/88/EC asks for 11 h of rest a day and 48 h a week on average (from memory). Local law, agreements and the site's rules come first.",
  },
};
