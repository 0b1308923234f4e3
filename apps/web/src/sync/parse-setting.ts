import { config } from "zod";

// The server's content rules allow no code made from text: schemas are walked, not compiled. Must run before any schema
// is made, so it comes before all that has some.
config({ jitless: true });
