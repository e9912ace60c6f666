// Turns any name into one that every file system takes and that cannot lead out of its folder.

const longest = 80;
/** Safe as they are, reserved ones apart: told without the alphabets of all languages, which take a millisecond to load. */
const alreadyPlain = /^[\w-](?:[\w. -]*[\w-])?$/;
/** Names that some systems keep for devices, with any ending. */
const reserved = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i;

export function safeName(name: string): string {
  if (name.length <= longest && alreadyPlain.test(name) && !reserved.test(name)) return name;
  const plain = name.normalize("NFC").replaceAll(/[^\p{L}\p{M}\p{N}._ -]/gu, "-");
  const short = Array.from(plain.replace(/^[. ]+/, ""))
    .slice(0, longest)
    .join("");
  const trimmed = short.replace(/[. ]+$/, "");
  if (trimmed === "") return "scenario";
  return reserved.test(trimmed) ? `_${trimmed}` : trimmed;
}
