// Names a run by its scenarios and its settings in short, so that runs with different settings have different folders.
import { checksum } from "#cli/machine/checksum.ts";
import { safeName } from "#cli/machine/safeName.ts";

/** With the longest CSV name still below the limits of every file system. */
const longest = 80;
const checksumDigits = 8;

/** `two-station-cool-8-s`; a name that was given stands for the whole. It is safe as the name of a folder. */
export function runName(name: string, settings: readonly string[], given?: string): string {
  const whole = given ?? [name, ...(settings.length > 0 ? [settingsInShort(settings)] : [])].join("-");
  return safeName(bounded(whole));
}

/** A long name keeps its beginning and gets a checksum of the whole. */
function bounded(name: string): string {
  const letters = Array.from(name);
  if (letters.length <= longest) return name;
  return `${letters.slice(0, longest - checksumDigits - 1).join("")}-${mark(name)}`;
}

function mark(text: string): string {
  return checksum(text).slice(0, checksumDigits);
}

/** `cool-8-s` of `stations.*.steps.cool=8 s`; with a checksum where the short form leaves something out. */
export function settingsInShort(settings: readonly string[]): string {
  const parts = settings.map((setting) => settingInShort(setting));
  const text = parts.map(({ short }) => short).join("-");
  const plain = parts.every(({ isWhole }) => isWhole);
  const most = longest - 20;
  if (plain && text.length <= most) return text;
  const beginning = Array.from(text)
    .slice(0, most - checksumDigits - 1)
    .join("")
    .replace(/-+$/u, "");
  return `${beginning}-${mark(JSON.stringify(settings))}`;
}

interface Short {
  readonly short: string;
  /** Nothing that distinguishes settings is left out. */
  readonly isWhole: boolean;
}

function settingInShort(setting: string): Short {
  const [path = "", value = ""] = setting.split(/=(.*)/su).map((part) => part.trim());
  const [key, amount] = [pathInShort(path), valueInShort(value)];
  return { short: `${key.short}-${amount.short}`, isWhole: key.isWhole && amount.isWhole };
}

/** Keys such as `plasticatingRate`, entries by number, and `*`. */
const plainPath = /^[a-z]+(?:[A-Z][a-z]+)*(?:\.(?:[a-z]+(?:[A-Z][a-z]+)*|\*)|\[\d+\])*$/u;

function pathInShort(path: string): Short {
  const keys = path
    .replace(/^stations\.(?:\*\.)?/u, "")
    .replace(/(?:^|(?<=\.))steps\./u, "")
    .replace(/^(?:run|delivery)\./u, "")
    .replaceAll("*", "all")
    .replaceAll(/(?<=[a-z])(?=[A-Z])/gu, "-");
  return { short: slug(keys), isWhole: plainPath.test(path) };
}

const number = String.raw`(?:\d+(?:\.\d+)?|\.\d+)`;
/** Units whose letters no system confuses when it ignores case. */
const plainValue = new RegExp(String.raw`^([+-]|\*\s*)?${number}\s*(?:[a-z]*(?:/[a-z]+)?|%|°[CF])$`, "u");
const moves: Readonly<Record<string, string>> = { "+": "plus ", "-": "minus ", "*": "times " };

function valueInShort(value: string): Short {
  if (/^(?:null|~|\[\s*\])$/u.test(value)) return { short: "none", isWhole: true };
  const words = value
    .replace(/^[+*-]/u, (sign) => moves[sign] ?? "")
    .replace("%", " percent")
    .replace(/(?<=\d)(?=[a-z])/u, " ");
  return { short: slug(words), isWhole: plainValue.test(value) || /^[a-z0-9]+$/u.test(value) };
}

/** Lower case, for systems that ignore case. */
function slug(text: string): string {
  const plain = text.toLowerCase().replaceAll(/[^\p{L}\p{M}\p{N}.]+|(?<!\d)\.|\.(?!\d)/gu, "-");
  return plain.replaceAll(/-+/gu, "-").replaceAll(/^-|-$/gu, "");
}
