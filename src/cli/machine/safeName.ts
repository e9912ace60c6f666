// Makes a file name that is valid on every file system and stays in its folder.

const longest = 80;
/** Safe names, apart from reserved ones. */
const alreadyPlain = /^[\w-](?:[\w. -]*[\w-])?$/;
/** Names that some systems reserve for devices, with any extension. */
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
