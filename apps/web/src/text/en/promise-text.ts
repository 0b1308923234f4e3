export interface RunWords {
  readonly pieces: string;
  readonly line: string;
  readonly mould: string;
  readonly start: string;
  readonly end: string;
  /** Null: not known. */
  readonly shift: string | null;
}

export interface PictureWords {
  readonly line: string;
  readonly start: string;
  readonly end: string;
  readonly before: string;
  readonly after: string;
}

export interface ShiftWords {
  readonly day: string;
  readonly start: string;
  readonly end: string;
  readonly lines: string;
}

/** Words of the page for sales: what a customer asks for, when it can be ready, and what is held for whom. */
export const promiseText = {
  promise: {
    title: "Promise",
    sections: "Kinds of enquiry",
    one: "One enquiry",
    many: "Many at once",
    lead: "When can it be ready?",
    product: "Product",
    productHint: "Name, number or colour",
    products: "Products found",
    noProduct: "No product has these words.",
    moreProducts: (n: string) => `and ${n} more: type on`,
    chooseProduct: "Choose one of the products found.",
    nearest: "Did you mean:",
    pieces: "Pieces",
    piecesHint: "40 000 or 40k",
    piecesWrong: "Write whole pieces from 1 to 1,000,000,000.",
    day: "Wanted by",
    time: "At",
    timeHint: "Empty: the end of that day",
    endOf: (day: string) => `the end of ${day}`,
    parts: "May come in parts",
    clear: "New enquiry",
    copyLink: "Copy link",
    linkCopied: "Link copied",
    linkHint: "The link opens this enquiry for a colleague",
    waiting: "Type a product and how many pieces; the answer appears here.",
    asking: "Working it out…",
    answer: "Answer",
    ready: "Ready for dispatch",
    inTime: (spare: string) => `in time, ${spare} to spare`,
    justInTime: "just in time",
    tooLate: (by: string) => `${by} after the day wanted`,
    earliest: "as early as can be without making anybody else late",
    fromStock: "All of it is in stock, and nobody else has it.",
    otherInputs:
      "The plan is older than the latest changes of orders or plant; the answer already counts with them as they are now.",
    unplannedOrders: (n: number) =>
      n === 1
        ? "1 order of the book is not planned yet: it may need the same hours."
        : `${n} orders of the book are not planned yet: they may need the same hours.`,
    unplannedHolds: (orders: string) =>
      `Held, but without a place in the plan: ${orders}. Nothing more can be held before a planner plans again.`,
    never: "Nothing can be promised before the plant is planned",
    neverHint:
      "A promise says where an order fits between those that are planned. Ask the planner to plan the order book, or do it on the board.",
    toBoard: "To the board",
    how: "How it comes about",
    steps: {
      stock: (pieces: string) => `${pieces} pieces come from stock.`,
      leastRun: (pieces: string) => `Made in runs of no less than ${pieces} pieces.`,
      units: (units: string, unit: string, pieces: string) =>
        `Made in whole packs: ${units} ${unit} of ${pieces}.`,
      scrap: (share: string, pieces: string) => `${pieces} are formed in all: about ${share} are rejects.`,
      change: (line: string, minutes: string, team: string | null, start: string) =>
        team === null
          ? `${line} is changed over for it, ${minutes}, from ${start}.`
          : `${line} is changed over for it by ${team}, ${minutes} of work, from ${start}.`,
      noChange: (line: string) => `${line} is set up for it already.`,
      run: ({ pieces, line, mould, start, end, shift }: RunWords) =>
        shift === null
          ? `${line} makes ${pieces} pieces with ${mould}, ${start} to ${end}.`
          : `${line} makes ${pieces} pieces with ${mould}, ${start} (shift “${shift}”) to ${end}.`,
      rests: (time: string, until: string) => `Then it has to rest ${time}, until ${until}.`,
      margin: (time: string) => `${time} more are kept in hand, because the speed is not proven.`,
      moved: (n: number) =>
        n === 1
          ? "1 other run moves for it and is still in time."
          : `${n} other runs move for it; all are still in time.`,
      movedOthers: (n: number) => (n === 1 ? "1 other run moves for it." : `${n} other runs move for it.`),
    },
    units: {
      piece: "pieces",
      stack: "stacks",
      carton: "cartons",
      pallet: "pallets",
    },
    rate: "Speed it counts with",
    proven: (perHour: string, reports: number) =>
      reports === 1
        ? `${perHour}, proven on that line by 1 report.`
        : `${perHour}, proven on that line by ${reports} reports.`,
    computed: (perHour: string) => `${perHour}, computed, not yet proven on that line.`,
    marginPlant: (share: string, rates: string) =>
      `${share} of the running time is added: 19 of 20 such runs stay within that, by ${rates} proven speeds of this plant.`,
    marginRule: (share: string) =>
      `${share} of the running time is added, a rule of thumb: too few speeds of this plant are proven.`,
    noMargin: (rates: string) =>
      `Nothing is added: the ${rates} proven speeds of this plant are no slower than those computed.`,
    picture: "On the line",
    pictureText: ({ line, start, end, before, after }: PictureWords) =>
      `${line} from ${start} to ${end}: the run among its neighbours. Before it: ${before}; after it: ${after}.`,
    nothingBeside: "nothing",
    pictureHint: "Ringed: this run. Gates are change-overs with their minutes, hatched time is closed.",
    sure: "How sure it is",
    sureWorking: "Trying it on many days with breakdowns…",
    sureFailed: "How sure it is could not be worked out.",
    chance: (times: string, of: string) => `About ${times} in ${of}`,
    chanceSure: "As good as certain",
    chanceHardly: "Hardly",
    chanceFor: (by: string) => `to be ready by ${by}`,
    at80: (time: string) => `8 in 10 are ready by ${time}.`,
    at95: (time: string) => `19 in 20 are ready by ${time}.`,
    atNever: (share: string) => `Not even ${share} are ready before the plan ends.`,
    sureOf: (runs: string) =>
      `Of ${runs} made-up courses of the plan, with breakdowns and speeds as they vary in this plant.`,
    chartText: (parts: string) => `Times on a line: ${parts}`,
    chart: { promised: "promised", wanted: "wanted", at80: "8 in 10", at95: "19 in 20" },
    others: "Other ways",
    othersWorking: "Looking for other ways…",
    noOthers: "There is no other way that is better in anything.",
    kinds: {
      whole: "In one run",
      split: "On two lines at once",
      "first part": "A first part in time, the rest later",
      "extra shift": "With an added shift",
      displacing: "By letting others wait",
    },
    earlier: (by: string) => `${by} earlier`,
    later: (by: string) => `${by} later`,
    sameTime: "at the same time",
    part: (pieces: string, time: string, line: string) => `${pieces} pieces ready ${time}, ${line}`,
    price: "What it costs the plant",
    more: (money: string) => `${money} more`,
    less: (money: string) => `${money} saved`,
    free: "nothing",
    changeMore: (time: string) => `${time} more in change-overs`,
    changeLess: (time: string) => `${time} less in change-overs`,
    overtime: (time: string) => `${time} of overtime`,
    priceDetails: "Item by item",
    delays: "Who would wait",
    delay: (customer: string, order: string, by: string) => `${customer}, order ${order}: ${by} late`,
    forecast: "a forecast, not ordered yet",
    shiftFirst: ({ day, start, end, lines }: ShiftWords) =>
      `A planner has to add the shift first: ${day}, ${start} to ${end}, ${lines}.`,
    plannerDecides: "A planner decides on this. Send the link of this enquiry.",
    partsAlone: "Parts are held one by one: ask for each of them alone.",
    choose: "Offer this instead",
    chosen: "Offered",
    backToFirst: "Back to the first answer",
    nowhere: "Ways that lead nowhere",
    nowhereWhy: {
      "parts-not-allowed": "the customer takes no parts",
      "no-day-wanted": "no day is wanted",
      "whole-in-time": "all of it is in time already",
      "no-run-to-shorten": "there is no run to bring forward",
      "no-closed-hours": "no closed hours stand in the way",
      "no-gain": "it would be no earlier",
      "nobody-counts-less": "nobody in the way counts for less",
      "no-place": "there is no place even then",
      "one-line": "only one line can make it",
      "too-small": "it is too little to share out",
      "no-room-for-the-rest": "the rest finds no place",
      "nothing-by-then": "nothing of it can be ready by then",
    } as Readonly<Record<string, string>>,
    impossible: "This cannot be promised",
    impossibleUntil: (time: string) => `There is no place for it before the plan ends on ${time}. Why:`,
    everyLine: "On every line",
    delaysAnother: (order: string, by: string) => `Order ${order} would be ${by} later than promised.`,
    delaysForGood: (order: string) => `Order ${order} would lose its place.`,
    whatNow: "Ask for fewer pieces or another day, look at the other ways, or ask a planner.",
    words: "What the words mean",
    glossary: [
      ["Line", "a machine that forms, cuts and stacks the goods from plastic sheet"],
      ["Mould", "the tool that gives the goods their shape; often there is only one"],
      ["Change-over", "setters take one mould out and put another in; the line stands meanwhile"],
      ["Proven speed", "measured when it ran; a computed one is not, so some time is added"],
      [
        "Held",
        "the hours and the stock are kept for your customer until the time you choose; then others may have them",
      ],
    ] as readonly (readonly [string, string])[],
  },
};
