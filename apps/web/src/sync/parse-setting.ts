import { config } from "zod";

// The server's content rules allow no code made from text: schemas are walked, not compiled. Must run before any schema
// is made, so it is the app's first import.
config({ jitless: true });
