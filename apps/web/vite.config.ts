import react from "@vitejs/plugin-react";
import { defaultClientConditions, defineConfig } from "vite";

/**
 * The parser and how it is set, in one chunk: chunks run before those that import from them, so it is set before any chunk
 * makes a schema, whatever the bundler shares between them.
 */
const parser = { name: "parser", test: /[\\/]node_modules[\\/]zod[\\/]|[\\/]sync[\\/]parse-setting\.ts$/ };

export default defineConfig({
  plugins: [react()],
  resolve: { conditions: ["source", ...defaultClientConditions] },
  // Fonts stay files: the server's content rules allow no data addresses.
  build: {
    outDir: "dist",
    emptyOutDir: true,
    sourcemap: false,
    assetsInlineLimit: 0,
    rolldownOptions: { output: { codeSplitting: { groups: [parser] } } },
  },
  server: { proxy: { "/api": "http://127.0.0.1:4310" } },
});
