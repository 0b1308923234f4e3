import { config } from "zod";

// The server's content rules allow no code made from text: schemas are walked, not compiled. Must run before any schema
// is made, so it is the app's first import; and that of every call, since the bundler moves schemas that lazy screens share
// into files that run before the app's own.
config({ jitless: true });
