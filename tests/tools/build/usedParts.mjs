// Bundles only the used source files of a package that is published as one large file; none of them has side effects.
import path from "node:path";
import { fileURLToPath } from "node:url";

const folder = fileURLToPath(new URL("../../../node_modules/simple-statistics", import.meta.url));
const inside = (from, name) => ({ path: path.join(from, name), sideEffects: false });

/** The large file computes tables of the normal distribution at every start. */
export const usedParts = {
  name: "used-parts",
  setup({ onResolve }) {
    onResolve({ filter: /^simple-statistics$/ }, () => inside(folder, "index.js"));
    onResolve({ filter: /^\.\// }, ({ path: name, resolveDir }) =>
      resolveDir.startsWith(folder) ? inside(resolveDir, name) : undefined,
    );
  },
};
