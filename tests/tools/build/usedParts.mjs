// Takes of a package that comes as one large file only the parts that are used: its own sources, none of which acts by being loaded.
import path from "node:path";
import { fileURLToPath } from "node:url";

const folder = fileURLToPath(new URL("../../../node_modules/simple-statistics", import.meta.url));
const inside = (from, name) => ({ path: path.join(from, name), sideEffects: false });

/** Whole it would work out tables of the normal law at every start. */
export const usedParts = {
  name: "used-parts",
  setup({ onResolve }) {
    onResolve({ filter: /^simple-statistics$/ }, () => inside(folder, "index.js"));
    onResolve({ filter: /^\.\// }, ({ path: name, resolveDir }) =>
      resolveDir.startsWith(folder) ? inside(resolveDir, name) : undefined,
    );
  },
};
