/** Words of the board as a picture to take away. */
export const pictureText = {
  picture: {
    open: "Board as picture…",
    title: "Board as a picture",
    hint: "With plant, plan, time shown and the meaning of its marks. SVG stays sharp at any size and its words can be searched; PNG goes into any document.",
    extent: "What it shows",
    extents: {
      "in sight": "Rows and time in sight, with the filter that is set",
      "whole plan": "All rows of the whole plan",
    },
    colours: "Colours",
    colourChoices: { light: "Light, for paper", screen: "As on the screen" },
    saveSvg: "Save as SVG",
    savePng: "Save as PNG",
    close: "Close",
    tooLarge:
      "The browser cannot draw so large a picture in dots. Show fewer rows or less time, or save it as SVG.",
    heading: (plant: string) => `${plant}: line board`,
    plan: (made: string) => `Plan of ${made}`,
    span: (from: string, to: string, zone: string) => `${from} to ${to}, times of ${zone}`,
    orders: (late: string, all: string) => `${late} of ${all} orders late`,
    onlyLate: "Late orders stand out, others are faint.",
    found: (sought: string) => `Orders with “${sought}” stand out, others are faint.`,
    legend: {
      run: "run, in its sheet's colour",
      clear: "clear sheet",
      late: "late, tail from the due time",
      change: "change, with its minutes",
      pause: "run pauses",
      closed: "closed time",
      due: "due",
      held: "held",
      frozen: "until here published runs stay",
      promised: "held for a customer",
      now: "now",
    },
  },
};
