// Puts many mutants into one text, each behind a switch, so that modules are loaded once for all of them.
import { readFileSync } from "node:fs";
import path from "node:path";
import { functionsOf, loopsOf } from "./mutants.mjs";
import { projectFolder, rooms } from "./sources.mjs";

const isInside = ([start, end], [from, until]) => from <= start && end <= until;
const sizeOf = ([start, end]) => end - start;

function variant(text, { around: [from, until], start, end, to }) {
  return text.slice(from, start) + to + text.slice(end, until);
}

/** The text of a range with the switches of all mutants in it. */
function withSwitches(text, range, mutants) {
  const inner = mutants.filter(({ around }) => isInside(around, range));
  const outermost = inner.filter(
    (one) => !inner.some((other) => sizeOf(other.around) > sizeOf(one.around) && isInside(one.around, other.around)),
  );
  const places = [...new Map(outermost.map((mutant) => [mutant.around.join(), mutant.around])).values()];
  let result = "";
  let at = range[0];
  for (const place of places.toSorted(([one], [other]) => one - other)) {
    result += text.slice(at, place[0]) + switchAt(text, place, inner);
    [, at] = place;
  }
  return result + text.slice(at, range[1]);
}

function switchAt(text, place, mutants) {
  const here = mutants.filter(({ around }) => around.join() === place.join());
  const below = mutants.filter((mutant) => !here.includes(mutant));
  const original = withSwitches(text, place, below);
  return here.reduce((rest, mutant) => {
    const isOn = `globalThis.isOn(${mutant.id})`;
    // Brackets, because a parenthesis before a colon may begin a function.
    return mutant.kind === "removal" ? `{if(!${isOn}){${rest}}}` : `[${isOn}?${variant(text, mutant)}:${rest}][0]`;
  }, original);
}

/** Loops and functions count their turns, because a mutant may go on without end. */
function counted(text) {
  const loops = loopsOf(text).flatMap(([start, end]) => [
    [start, "{globalThis.turn();"],
    [end, "}"],
  ]);
  const functions = functionsOf(text).filter(({ isBlock }) => isBlock);
  const insertions = [...loops, ...functions.map(({ body }) => [body.start + 1, "globalThis.turn();"])];
  const ordered = insertions.toSorted(([one], [other]) => other - one);
  return ordered.reduce((all, [at, what]) => all.slice(0, at) + what + all.slice(at), text);
}

const isOfRooms = (file) =>
  rooms.some((room) => room !== "core" && file.startsWith(`src/${room}/`)) && !file.endsWith(".d.ts");

/** The text of a file with its mutants, null for a file of another room. */
export function switched(file, mutants) {
  if (!isOfRooms(file)) return null;
  const text = readFileSync(path.join(projectFolder, file), "utf8");
  const own = mutants.filter((mutant) => mutant.file === file);
  return counted(own.length === 0 ? text : withSwitches(text, [0, text.length], own));
}
