/** Words of a run's best plan so far, which can be looked at while the run goes on. */
export const lookText = {
  look: {
    open: "Look at it",
    openHint: "Show the run's best plan so far on the board (B)",
    back: "Back to my plan",
    backHint: "Show the working plan again (B)",
    keep: "Stop and keep this plan",
    keepHint: "Stop the run; the plan on the board, and no other, becomes the working plan",
    title: "The run's best plan so far",
    notYours: "This is the run's best plan so far, not yet yours.",
    age: (seconds: number) => (seconds === 0 ? "Found just now." : `${seconds} s old.`),
    noEdits: "It is not changed by hand: keep it first, or go back to your plan.",
    noEditsHere:
      "This is the run's best plan so far. Changes by hand, holding orders, and why orders are late come once it is kept.",
    notTaken: "Nothing was changed. This plan is not yet yours: keep it first, or go back to your plan (B).",
    loading: "Fetching the run's best plan so far…",
  },
};
