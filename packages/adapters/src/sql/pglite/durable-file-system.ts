import type { PGlite } from "@electric-sql/pglite";
import { NodeFS } from "@electric-sql/pglite/nodefs";
import { closeSync, fsyncSync, openSync } from "node:fs";

type ModuleOptions = Parameters<NodeFS["init"]>[1];

/** What this file uses of the file system inside the WebAssembly module: not part of the package's types. */
interface OpenStream {
  readonly nfd?: number;
  readonly node: object;
}
interface NodeFileSystem {
  readonly stream_ops: { fsync?: (stream: OpenStream) => number };
  readonly realPath: (node: object) => string;
}

/**
 * PGlite's file system on Node, with the fsync that it lacks: without it a commit is only in the operating system's
 * cache when it is acknowledged, and a power cut loses it. Leans on internals of the package, so the package's
 * version is pinned and a test counts the calls.
 */
export class DurableFileSystem extends NodeFS {
  override async init(pg: PGlite, options: ModuleOptions): Promise<{ emscriptenOpts: ModuleOptions }> {
    const { emscriptenOpts } = await super.init(pg, options);
    const addFsync = (module: object): void => {
      const files = (module as { NODEFS: NodeFileSystem }).NODEFS;
      files.stream_ops.fsync = (stream) => {
        if (stream.nfd === undefined) fsyncFolder(files.realPath(stream.node));
        else fsyncSync(stream.nfd);
        return 0;
      };
    };
    const before = emscriptenOpts.preRun ?? [];
    return {
      emscriptenOpts: {
        ...emscriptenOpts,
        preRun: [...(Array.isArray(before) ? before : [before]), addFsync],
      },
    };
  }
}

/** A new file's name is only safe once its folder is written too. */
function fsyncFolder(folder: string): void {
  const handle = openSync(folder, "r");
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
