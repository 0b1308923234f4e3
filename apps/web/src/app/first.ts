import { askFirst } from "../sync/first-calls.ts";
import { keepDensity } from "./density.ts";
import { keepTheme } from "./theme.ts";

// A script of its own, a kilobyte: it puts colours and spacing on the page before the first paint, and asks the server for what the
// first screen shows while the app is still on its way.
keepTheme();
keepDensity();
askFirst(window.location.pathname);
