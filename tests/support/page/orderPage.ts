// The place Order of a page in any browser: waits for the answer, and reads what it shows.
import { expect } from "vitest";
import { callBlowcell } from "../../cli/callBlowcell.ts";
import { inOneLine, openAt, textOf, textsOf, waitForNone, waitForText, type DrivenPage } from "./drivenPage.ts";

interface OrderCase {
  readonly scenario: string;
  /** As the address keeps it. */
  readonly form: Readonly<Record<string, string | readonly string[]>>;
  readonly verdict: RegExp;
}

const shifts = { start: "2026-11-30 06:00", shifts: "2 x 8 h, mon-fri" };

export const orderCases: readonly OrderCase[] = [
  {
    scenario: "order-by-friday",
    form: { order: ["6000 of natural bottle", "4000 of blue bottle"], due: "2026-11-30 10:12" },
    verdict: /^No: /u,
  },
  {
    scenario: "order-by-friday",
    form: { order: "6000 of natural bottle", due: "Monday 10:00", chance: "80 %", levers: "yes" },
    verdict: /^Yes: /u,
  },
  { scenario: "two-station", form: { order: "20000", due: "Tuesday 14:00", ...shifts }, verdict: /^(?:Yes|No): /u },
  {
    scenario: "stops-and-repairs",
    form: { order: "8000", due: "1 d", chance: "90 %" },
    verdict: /^(?:Yes|No|Undecided): /u,
  },
  {
    scenario: "order-by-friday",
    form: { order: "600 of natural bottle", due: "Monday 08:10", units: "us" },
    verdict: /^(?:Yes|No): /u,
  },
  { scenario: "one-operator", form: { order: "3000" }, verdict: /half of 100 runs are done by/u },
  { scenario: "two-shifts-one-color", form: { order: "4000", due: "8 h" }, verdict: /^(?:Yes|No|Undecided): /u },
];

export const orderedScenarios = [...new Set(orderCases.map(({ scenario }) => scenario))];

export async function openOrder(page: DrivenPage, file: string, { scenario, form }: OrderCase): Promise<void> {
  const parts = new URLSearchParams({ scenario: `${scenario}.yaml`, place: "order" });
  for (const [key, texts] of Object.entries(form)) for (const text of [texts].flat()) parts.append(key, text);
  await openAt(page, file, parts);
}

/** Until nothing is run any more. */
export async function answered(page: DrivenPage, verdict: RegExp): Promise<string> {
  await waitForText(page, ".order .answer", verdict);
  await waitForNone(page, ".order progress");
  return textOf(page, ".order .answer");
}

export const shownCall = (page: DrivenPage): Promise<string> => textOf(page, ".order .call pre");

/** The arguments of a call that is quoted for a shell. */
function argumentsOf(call: string): readonly string[] {
  const words = call.match(/(?:"[^"]*"|'[^']*'|[^\s"'])+/gu) ?? [];
  return words.map((word) => word.replaceAll(/^(["'])(.*)\1$/gu, "$2"));
}

/** Of the table whose caption begins so. */
async function rowsOf(page: DrivenPage, caption: string): Promise<readonly (readonly string[])[]> {
  const rows = `document.querySelectorAll('.order [role=region][aria-label^="${caption}"] tbody tr')`;
  return (await page.evaluate(
    `[...${rows}].map((row) => [...row.cells].map((cell) => cell.textContent))`,
  )) as string[][];
}

/** Runs the call that the page shows, and compares all that both say. */
export async function expectSameAsCommand(page: DrivenPage, folder: string): Promise<void> {
  const [program, ...rest] = argumentsOf(await shownCall(page));
  expect(program).toBe("blowcell");
  const { output } = callBlowcell([...rest, "--out", `out-${Date.now()}`], { folder });
  const words = inOneLine(output);
  expect(words.startsWith(`${await textOf(page, ".order .answer")} `)).toBe(true);
  const behind = ".order .answer ~ p:not(.count), .order section[aria-labelledby=order-uses] > p";
  for (const text of await textsOf(page, behind)) expect(words).toContain(text);
  const [dates, uses, changes] = await Promise.all(
    ["Dates by which", "What it uses", "The same random numbers"].map((caption) => rowsOf(page, caption)),
  );
  expect(dates!.length).toBeGreaterThanOrEqual(3);
  // A change has a button behind its name; interval and number of runs are in the file only.
  const plain = changes!.map(([name = "", , ...cells]) => [name, ...cells.slice(0, -2)]);
  for (const row of [...dates!, ...uses!, ...plain]) expect(words).toContain(inOneLine(row.join(" ")));
}
