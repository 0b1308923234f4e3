/** Prices of the terms that only some problems have, all off. */
export const NO_TERMS = {
  overtimePerHour: 0,
  earlinessPerWeightHour: 0,
  balancePerHour: 0,
  movedLinePerOrder: 0,
  movedStartPerHour: 0,
};
