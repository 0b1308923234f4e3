/** Words of working the plan by hand: one step back and forth, and what each was. */
export const editText = {
  edit: {
    stepButtons: "Steps back and forth",
    undo: "Undo",
    redo: "Redo",
    undoWhat: (what: string) => `Undo: ${what} (Ctrl+Z)`,
    redoWhat: (what: string) => `Redo: ${what} (Ctrl+Shift+Z or Ctrl+Y)`,
    nothingToUndo: "Nothing to undo",
    nothingToRedo: "Nothing to redo",
    earlierStep: "an earlier step",
    working: "The plan is being changed…",
    steps: {
      move: (what: string, line: string) => `Moved ${what} to ${line}`,
      "take out": (order: string) => `Took order ${order} out of the plan`,
      "put back": (order: string) => `Put order ${order} back into the plan`,
      split: (order: string, pieces: string, line: string) =>
        `Split order ${order}: ${pieces} pieces to ${line}`,
      join: (order: string) => `Joined the lots of order ${order}`,
      run: "Planning run",
      restore: "Fetched back an earlier plan",
      publish: "Gave the plan out",
      undo: (what: string) => `Taken back: ${what}`,
      redo: (what: string) => `Done again: ${what}`,
    },
    lotOfOrder: (order: string, lot: string) => `lot ${lot} of order ${order}`,
    wholeOrder: (order: string) => `order ${order}`,
    dismiss: "Dismiss",
  },
};
