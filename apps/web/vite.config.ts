import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import react from "@vitejs/plugin-react";
import { defaultClientConditions, defineConfig, type Plugin } from "vite";

/**
 * The parser and how it is set, in one chunk: chunks run before those that import from them, so it is set before any chunk
 * makes a schema, whatever the bundler shares between them.
 */
const parser = { name: "parser", test: /[\\/]node_modules[\\/]zod[\\/]|[\\/]sync[\\/]parse-setting\.ts$/ };

export default defineConfig({
  plugins: [react(), firstScript(), compressedTwins()],
  resolve: { conditions: ["source", ...defaultClientConditions] },
  build: {
    outDir: "dist",
    emptyOutDir: true,
    sourcemap: false,
    // Fonts stay files: the server's content rules allow no data addresses.
    assetsInlineLimit: 0,
    rolldownOptions: {
      input: { index: "index.html", first: "src/app/first.ts" },
      output: { codeSplitting: { groups: [parser] } },
    },
  },
  server: { proxy: { "/api": "http://127.0.0.1:4310" } },
});

/** Lets the small first script run as soon as it is there, before the page is painted. While developing, the app's own import of it will do. */
function firstScript(): Plugin {
  return {
    name: "first-script",
    transformIndexHtml: {
      order: "post",
      handler: (_, { bundle }) => {
        const first = Object.values(bundle ?? {}).find(
          (part) => part.type === "chunk" && part.name === "first",
        );
        if (first === undefined) return [];
        const attrs = {
          type: "module",
          async: true,
          blocking: "render",
          crossorigin: true,
          src: `/${first.fileName}`,
        };
        return [{ tag: "script", attrs, injectTo: "head" }];
      },
    },
  };
}

/** Lays every file of text beside itself compressed, as small as can be: the server sends these and compresses nothing anew. */
function compressedTwins(): Plugin {
  return {
    name: "compressed-twins",
    apply: "build",
    writeBundle: ({ dir = "" }, bundle) => {
      for (const name of Object.keys(bundle).filter((each) => /\.(js|css|html)$/.test(each))) {
        const path = join(dir, name);
        const content = readFileSync(path);
        writeFileSync(`${path}.gz`, gzipSync(content, { level: 9 }));
        const quality = { [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY };
        writeFileSync(`${path}.br`, brotliCompressSync(content, { params: quality }));
      }
    },
  };
}
