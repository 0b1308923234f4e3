import { OperatorPool, SetterTeam, Trolley, WorkCalendar } from "@formweek/capacity-model";

const early = (weekdays: readonly number[], breaks: boolean) => ({
  name: "early",
  weekdays,
  start: "06:00",
  end: "14:00",
  breaks: breaks ? [{ start: "09:30", end: "10:00" }] : [],
});
const late = (weekdays: readonly number[], breaks: boolean) => ({
  name: "late",
  weekdays,
  start: "14:00",
  end: "22:00",
  breaks: breaks ? [{ start: "18:00", end: "18:30" }] : [],
});
const night = (weekdays: readonly number[], breaks: boolean) => ({
  name: "night",
  weekdays,
  start: "22:00",
  end: "06:00",
  breaks: breaks ? [{ start: "02:00", end: "02:30" }] : [],
});
const workdays = [1, 2, 3, 4, 5];
const everyDay = [1, 2, 3, 4, 5, 6, 7];
const nights = [1, 2, 3, 4, 7];
const airService = [{ from: "2026-12-02T06:00", to: "2026-12-02T10:00", reason: "compressed-air service" }];

/** Shift calendars of lines, setters and operators; invented. Lines run through breaks, setters take theirs. */
export const demoCalendars: readonly WorkCalendar[] = [
  {
    id: "three-shift",
    name: "Three shifts, Sunday night to Friday",
    shifts: [early(workdays, false), late(workdays, false), night(nights, false)],
    closures: airService,
  },
  {
    id: "two-shift",
    name: "Two shifts, Monday to Friday",
    shifts: [early(workdays, true), late(workdays, true)],
    closures: airService,
  },
  {
    id: "continuous",
    name: "Continuous, seven days",
    shifts: [early(everyDay, false), late(everyDay, false), night(everyDay, false)],
    closures: airService,
  },
  {
    id: "setters-day",
    name: "Setters, early and late",
    shifts: [early([1, 2, 3, 4, 5, 6], true), late(workdays, true)],
  },
  {
    id: "setters-night",
    name: "Setters, late and night",
    shifts: [late(workdays, true), night(nights, true)],
  },
  {
    id: "operators-day",
    name: "Operators, early and late",
    shifts: [early(workdays, false), late(workdays, false)],
  },
  { id: "operators-night", name: "Operators, night", shifts: [night(nights, false)] },
  {
    id: "operators-weekend",
    name: "Operators, weekend",
    shifts: [early([6, 7], false), late([6, 7], false), night([5, 6], false)],
  },
].map((calendar) => WorkCalendar.parse(calendar));

export const demoTeams: readonly SetterTeam[] = [
  SetterTeam.parse({ id: "setters-A", name: "Setter team A", calendarId: "setters-day", setters: 2 }),
  SetterTeam.parse({ id: "setters-B", name: "Setter team B", calendarId: "setters-night", setters: 2 }),
];

export const demoTrolleys: readonly Trolley[] = [Trolley.parse({ id: "trolley", name: "Mould trolley" })];

export const demoPools: readonly OperatorPool[] = [
  OperatorPool.parse({
    id: "operators",
    name: "Operators",
    crews: [
      { calendarId: "operators-day", heads: 5.5 },
      { calendarId: "operators-night", heads: 5 },
      { calendarId: "operators-weekend", heads: 1 },
    ],
  }),
];
