// Turns any name into one that every file system takes and that cannot lead out of its folder.

const longest = 80;
/** Names that some systems keep for devices, with any ending. */
const reserved = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i;

export function safeName(name: string): string {
  const plain = name.normalize("NFC").replaceAll(/[^\p{L}\p{M}\p{N}._ -]/gu, "-");
  const short = Array.from(plain.replace(/^[. ]+/, ""))
    .slice(0, longest)
    .join("");
  const trimmed = short.replace(/[. ]+$/, "");
  if (trimmed === "") return "scenario";
  return reserved.test(trimmed) ? `_${trimmed}` : trimmed;
}
