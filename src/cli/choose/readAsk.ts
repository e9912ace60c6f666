// Reads what a call asks of a choice: need, chance, confidence, worthwhile difference and the cap of replications.
import { usualWorthwhile, type Worthwhile } from "#analysis/choice/worthwhile.ts";
import type { Need } from "#analysis/choice/observed.ts";
import { firstReplications } from "#analysis/choice/choice.ts";
import type { Fault } from "#foundation/fault.ts";
import type { Issue } from "#foundation/issue.ts";
import { isQuantity, parseQuantity } from "#foundation/quantity.ts";
import type { Options } from "#cli/call/command.ts";
import { chooseIssue } from "./chooseIssues.ts";

/** What does not depend on the measures of the layouts. */
export interface Ask {
  readonly worthwhile: WrittenWorthwhile;
  readonly confidence: number;
  readonly need: Need | null;
  readonly mostReplications: number;
}

/** `unit` as it was written; "" for a plain number and for a share. */
export interface WrittenWorthwhile {
  readonly difference: Worthwhile;
  readonly unit: string;
  readonly isGiven: boolean;
}

const usualConfidence = 0.95;
const usualChance = 0.95;
/** Nearly every pair of layouts is decided before; more would take longer than anyone waits. */
const usualMost = 2000;

export function readAsk(options: Options): Ask | readonly Issue[] {
  const confidence = readShare("--confidence", options.confidence, usualConfidence, [0.8, 0.999]);
  const chance = readShare("--chance", options.chance, usualChance, [0.5, 0.99]);
  const mostReplications = readMost(options.replications);
  const worthwhile = readWorthwhile(options.worthwhile);
  const need = readNeed(options, typeof chance === "number" ? chance : usualChance);
  const issues = [confidence, chance, mostReplications, worthwhile, need].filter(isIssue);
  if (options.chance !== undefined && options.need === undefined) {
    issues.push(chooseIssue("chance-alone", "The chance stands without a need.", { option: "--chance" }));
  }
  return isIssue(confidence) || isIssue(mostReplications) || isIssue(worthwhile) || isIssue(need) || issues.length > 0
    ? issues
    : { worthwhile, confidence, need, mostReplications };
}

function isIssue(found: number | object | null): found is Issue {
  return typeof found === "object" && found !== null && "severity" in found;
}

function ofOption(option: string, value: string, fault: Fault): Issue {
  return { ...fault, severity: "error", path: "", fate: "file", option, value };
}

type Range = readonly [least: number, most: number];

function readShare(option: string, text: string | undefined, usual: number, [least, most]: Range): number | Issue {
  if (text === undefined) return usual;
  const found = parseQuantity(text, "share");
  if (!isQuantity(found)) return ofOption(option, text, found);
  if (found.value >= least && found.value <= most) return found.value;
  const expected = `a share from ${least * 100} to ${most * 100} %`;
  return ofOption(option, text, {
    code: "out-of-range",
    message: `${text.trim()} is outside ${least * 100} to ${most * 100} %.`,
    expected,
    remedy: `Write ${expected}; ${usual * 100} % where left out.`,
  });
}

const largestMost = 100_000;

function readMost(text: string | undefined): number | Issue {
  if (text === undefined) return usualMost;
  const count = Number(text);
  if (/^\d+$/u.test(text.trim()) && count >= firstReplications && count <= largestMost) return count;
  const expected = `a whole number from ${firstReplications} to ${largestMost}`;
  return ofOption("--replications", text, {
    code: /^\d+$/u.test(text.trim()) ? "out-of-range" : "not-whole",
    message: `The most replications of a layout cannot be ${text.trim() === "" ? "nothing" : text.trim()}.`,
    expected,
    remedy: `Write ${expected}; ${usualMost} where left out.`,
  });
}

const largestShare = 0.5;

function readWorthwhile(text: string | undefined): WrittenWorthwhile | Issue {
  if (text === undefined) return { difference: usualWorthwhile, unit: "", isGiven: false };
  const [, number, unit = ""] = /^((?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(\D*.*)$/u.exec(text.trim()) ?? [];
  const isShare = unit === "%";
  const value = Number(number) / (isShare ? 100 : 1);
  if (number !== undefined && value > 0 && Number.isFinite(value) && (!isShare || value <= largestShare)) {
    return { difference: { by: isShare ? "share" : "amount", value }, unit: isShare ? "" : unit, isGiven: true };
  }
  const message =
    number === undefined
      ? `"${text}" is no difference.`
      : isShare && value > 0
        ? `A difference of ${text.trim()} is too large.`
        : "A difference that does not matter is above 0.";
  const expected = 'a number such as "12", or a share up to 50 % such as "1 %"';
  return chooseIssue("worthwhile-form", message, { option: "--worthwhile", value: text, expected });
}

const needPattern = /^(\S+)\s*(?:good\s+)?(?:parts?|bottles?)?\s+in\s+(.+)$/u;
const longest = 31_536_000;

function readNeed({ need, length }: Options, chance: number): Need | null | Issue {
  if (need === undefined) return null;
  const option = "--need";
  const [, count, time] = needPattern.exec(need.trim()) ?? [];
  const expected = 'parts and a time such as "200000 parts in 5 d"';
  if (count === undefined || time === undefined) {
    return chooseIssue("need-form", `"${need}" does not give parts and a time.`, { option, value: need, expected });
  }
  const [parts, within] = [parseQuantity(`${count} parts`, "parts"), parseQuantity(time, "time")];
  if (!isQuantity(parts)) return ofOption(option, need, parts);
  if (!isQuantity(within)) return ofOption(option, need, within);
  if (parts.value < 1 || within.value <= 0 || within.value > longest) {
    const message = "A need is at least one part, in a time above 0 and up to a year.";
    return chooseIssue("need-form", message, { option, value: need, expected });
  }
  if (length !== undefined) {
    return chooseIssue("need-length", "A run is as long as the time of the need.", {
      option: "--length",
      value: length,
    });
  }
  return { parts: parts.value, within: within.value, chance };
}

/** Options that only a choice has, as they were given, for the name of the run and to recognize an earlier one. */
export function askTexts({ by, worthwhile, need, chance, confidence, replications }: Options): readonly string[] {
  const given = Object.entries({ by, worthwhile, need, chance, confidence, most: replications });
  return given.flatMap(([key, text]) => (text === undefined ? [] : [`${key}=${text.trim()}`]));
}
