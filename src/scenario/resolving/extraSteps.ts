// Steps that a user adds to a station's cycle, each after a step that is there.
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Path } from "#scenario/values/finding.ts";
import { settled, type Resolution, type StationDraft } from "./resolution.ts";
import type { CycleStep, ExtraStepSpec } from "#scenario/scenario.ts";

const moldSteps: readonly CycleStep[] = ["close", "blow", "cool", "vent", "open", "remove"];

/** Steps that one of your own may follow. */
function cycleSteps(draft: Resolution["draft"]): readonly string[] {
  const isContinuous = draft.delivery?.kind === "continuous";
  return isContinuous ? ["travel in", "cut", "travel out", ...moldSteps] : ["drop", ...moldSteps];
}

/** The extra steps; undefined where one of them could not be read. */
export function extraSteps({ extra }: StationDraft): readonly ExtraStepSpec[] | undefined {
  const steps = (extra ?? []).map((step) => {
    const time = settled(step?.time);
    const { name, after } = step ?? {};
    return name === undefined || after === undefined || time === undefined ? undefined : { name, after, time };
  });
  const complete = steps.filter((step) => step !== undefined);
  return complete.length === steps.length ? complete : undefined;
}

export function checkExtra({ extra }: StationDraft, path: Path, { draft, report }: Resolution): void {
  const names: string[] = [];
  for (const [index, step] of (extra ?? []).entries()) {
    const at = [...path, "extra", index];
    checkAfter(step?.after, [...cycleSteps(draft), ...names], [...at, "after"], report);
    if (step?.name === undefined) continue;
    if (names.includes(step.name)) {
      const message = `Another extra step of this station is called "${step.name}" already.`;
      report({
        code: "extra-twice",
        message,
        expected: "a name of its own",
        remedy: "Rename one of them.",
        path: [...at, "name"],
      });
    }
    names.push(step.name);
  }
}

function checkAfter(
  after: string | undefined,
  known: readonly string[],
  path: Path,
  report: Resolution["report"],
): void {
  if (after === undefined || known.includes(after)) return;
  const meant = didYouMean(after, known);
  const expected = `one of ${known.map((each) => `\`${each}\``).join(", ")}`;
  const remedy =
    meant === undefined
      ? "Name a step of the cycle, or an extra step listed before this one."
      : `Did you mean \`${meant}\`?`;
  report({ code: "extra-after", message: `There is no step "${after}" to follow.`, expected, remedy, path });
}
