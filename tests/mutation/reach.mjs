// Marks every function of the mutated rooms, so that a run of the tests tells which file of tests reaches which function.
import { readFileSync } from "node:fs";
import path from "node:path";
import { endOfImports, functionsOf } from "./mutants.mjs";

const rooms = /^src\/(?:engine|cell|analysis|physics)\/.*(?<!\.d)\.ts$/;

/**
 * The text of a file with a mark in every function, or null for a file of another room. What a module calls while it is loaded is
 * noted for the module, because it is loaded once for many files of tests.
 */
export function marked(projectFolder, file) {
  const name = path.relative(projectFolder, file);
  if (!rooms.test(name)) return null;
  const text = readFileSync(file, "utf8");
  const mark = (number) => `globalThis.reached?.mark(${JSON.stringify(`${name}#${number}`)})`;
  const insertions = functionsOf(text).flatMap(({ body, isBlock }, number) =>
    isBlock
      ? [[body.start + 1, `${mark(number)};`]]
      : [
          [body.start, `(${mark(number)},`],
          [body.end, ")"],
        ],
  );
  insertions.push([endOfImports(text), `\n;globalThis.reached?.load(${JSON.stringify(name)});`]);
  insertions.push([text.length, "\n;globalThis.reached?.load();"]);
  return inserted(text, insertions);
}

/** At equal places the later insertion stands first: an inner function ends before the outer one. */
function inserted(text, insertions) {
  const ordered = insertions.toSorted(([one], [other]) => other - one);
  return ordered.reduce((all, [at, what]) => all.slice(0, at) + what + all.slice(at), text);
}
