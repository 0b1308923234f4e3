/** Version of the engine: raised whenever the same input, seed and steps may give another plan. */
export const ENGINE_VERSION = "2.3.1";
