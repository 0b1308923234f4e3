import fc from "fast-check";
import { propertySeed, SEED_VARIABLE } from "./property-seed.ts";

/** Run before every test file: properties that name no seed of their own all draw from that of the run. */
fc.configureGlobal({ seed: propertySeed(process.env[SEED_VARIABLE]) });
