// The finding for a key that the glossary does not know where it stands, with the nearest thing that was probably meant.
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Finding, Path } from "#scenario/values/finding.ts";
import { decimalCommaKey } from "#scenario/values/leaf.ts";
import { keysOf } from "#scenario/values/lenient.ts";
import { homesOf } from "./keyIndex.ts";

/** `parent` is the mapping's schema, where known. */
export function unknownKey(key: string, path: Path, parent: unknown): Finding {
  const known = keysOf(parent).filter((each) => each !== "$schema");
  const at = { path: [...path, key], at: "key", value: key } as const;
  const expected = `one of ${known.map((each) => `\`${each}\``).join(", ")}`;
  if (key === "<<") {
    const remedy = "Write the keys out here.";
    return { ...at, code: "yaml-anchor", message: "Merge keys are not part of the format.", expected, remedy };
  }
  if (/^\d/u.test(key)) return { ...at, ...decimalCommaKey(key, expected) };
  return {
    ...at,
    code: "unknown-key",
    message: `The key \`${key}\` is not known here.`,
    expected,
    remedy: remedyFor(key, known),
  };
}

function remedyFor(key: string, known: readonly string[]): string {
  const homes = homesOf(key);
  if (homes.length > 0) return `It belongs to ${homes.map((home) => `\`${home}\``).join(" or ")}.`;
  const meant = didYouMean(key, known);
  return meant === undefined
    ? "Delete it, or see `blowcell schema` for the keys there are."
    : `Did you mean \`${meant}\`?`;
}
