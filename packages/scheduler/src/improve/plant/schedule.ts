/** How a plant is annealed, by its size. */
export interface Schedule {
  /** times that the temperature falls and lateness grows to its full price */
  readonly rounds: number;
  /** hours of change, by their price, that an hour of lateness counts at first */
  readonly lateStart: number;
  /** share of a round over which lateness grows to its full price */
  readonly rampShare: number;
  /** temperature at the beginning and at the end, in usual losses */
  readonly hotShare: number;
  readonly coldShare: number;
  /** one step in so many moves a campaign as a whole; 0 for none */
  readonly campaignOneIn: number;
}

/** Where few changes are at stake, little is won by saving them first. */
const SMALL: Schedule = {
  rounds: 4,
  lateStart: 0.3,
  rampShare: 0.5,
  hotShare: 8,
  coldShare: 0.0005,
  campaignOneIn: 0,
};
/** Measured at 200 jobs: whole campaigns that move let three in four of the late orders be on time. */
const MIDDLING: Schedule = {
  rounds: 1,
  lateStart: 0.03,
  rampShare: 0.8,
  hotShare: 1,
  coldShare: 0.02,
  campaignOneIn: 6,
};
/** Measured at 500 jobs: more are on time when lateness grows slowly and it stays warm. */
const LARGE: Schedule = {
  rounds: 1,
  lateStart: 0.01,
  rampShare: 0.9,
  hotShare: 1,
  coldShare: 0.3,
  campaignOneIn: 0,
};
/** Measured at 2,000 jobs: campaigns come together only while lateness hardly counts, and time is short for warmth. */
const LARGEST: Schedule = {
  rounds: 1,
  lateStart: 0.0005,
  rampShare: 0.9,
  hotShare: 0.25,
  coldShare: 0.08,
  campaignOneIn: 0,
};

/** A plan stands that is to stay: what leaves its place at first would seldom find back to it. */
const CALM: Schedule = {
  rounds: 1,
  lateStart: Infinity,
  rampShare: 0.8,
  hotShare: 0.1,
  coldShare: 0.02,
  campaignOneIn: 0,
};

/** Schedule for a plant of so many jobs; `calm`: distance from a published plan has its price. */
export function scheduleFor(jobs: number, calm: boolean): Schedule {
  if (calm) return CALM;
  if (jobs <= 40) return SMALL;
  if (jobs <= 300) return MIDDLING;
  return jobs <= 1000 ? LARGE : LARGEST;
}
