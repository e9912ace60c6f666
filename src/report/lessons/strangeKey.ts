// The finding for a key that a lesson does not have where it stands.
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Finding, Path } from "#scenario/values/finding.ts";
import { keysOf } from "#scenario/values/lenient.ts";

export function strangeKey(key: string, path: Path, parent: unknown): Finding {
  const known = keysOf(parent);
  const meant = didYouMean(key, known);
  return {
    code: "unknown-key",
    message: `The key \`${key}\` is not known here.`,
    expected: `one of ${known.map((each) => `\`${each}\``).join(", ")}`,
    remedy:
      meant === undefined ? "Delete it, or write one of the keys that are known here." : `Did you mean \`${meant}\`?`,
    path: [...path, key],
    at: "key",
    value: key,
  };
}
