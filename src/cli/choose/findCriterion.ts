// Finds the measure that decides, and the worthwhile difference in its unit, once a replication shows which measures there are.
import { criteria, criterionNamed, usualCriterion, type Criterion } from "#analysis/choice/criterion.ts";
import { haveSameCosts } from "#analysis/choice/choice.ts";
import type { Layout } from "#analysis/choice/layout.ts";
import { costWindows, measuresOf } from "#analysis/choice/observed.ts";
import type { Worthwhile } from "#analysis/choice/worthwhile.ts";
import { costStudy } from "#analysis/indicators/costStudy.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { closestWords } from "#foundation/didYouMean.ts";
import type { Issue } from "#foundation/issue.ts";
import { chooseIssue } from "./chooseIssues.ts";
import type { WrittenWorthwhile } from "./readAsk.ts";

export interface Found {
  readonly criterion: Criterion;
  readonly worthwhile: Worthwhile;
}

/** `trials`: replication 1 of each layout. A layout that comes to a standstill has no measures. */
export function findCriterion(
  layouts: readonly Layout[],
  trials: readonly ReplicationAnswer[],
  { by = usualCriterion, worthwhile }: { readonly by?: string | undefined; readonly worthwhile: WrittenWorthwhile },
): Found | readonly Issue[] {
  const tried = layouts.flatMap(({ scenario }, i) => {
    const answer = trials[i]!;
    if (answer.standstill !== null) return [];
    const windows = costWindows(scenario, answer);
    return [{ measures: measuresOf(scenario, answer, windows), costs: costStudy(scenario, [answer], windows) }];
  });
  const known = criteria(tried.map(({ measures }) => measures));
  const criterion = criterionNamed(by, known);
  if (criterion === undefined) return [unknownMeasure(by, [...known.keys()])];
  const isTotal = ["cost per hour", "cost per 1,000 good parts"].includes(criterion.measure);
  const issues = [
    ...(isTotal && !haveSameCosts({ courses: tried })
      ? [chooseIssue("by-costs", "The costs of the layouts have different items.", { option: "--by", value: by })]
      : []),
    ...unitIssues(worthwhile, criterion),
  ];
  return issues.length > 0 ? issues : { criterion, worthwhile: worthwhile.difference };
}

function unknownMeasure(by: string, names: readonly string[]): Issue {
  const [meant] = closestWords(by, names, 1);
  return chooseIssue("by-unknown", `No measure of all layouts is called "${by}".`, {
    option: "--by",
    value: by,
    expected: `one of: ${names.filter((name) => !name.includes(": ")).join(", ")}`,
    remedy: meant === undefined ? "Write one of these measures." : `Did you mean "${meant}"?`,
  });
}

/** The ways in which a rate of parts is written. */
const anHour = /^(?:good )?(?:parts )?(?:per h(?:our)?|\/h|an hour|1\/h)$/u;

/** A share has no unit of its own: it is one of the first layout. */
function unitIssues({ unit, difference }: WrittenWorthwhile, criterion: Criterion): readonly Issue[] {
  if (difference.by === "share" || unit === "" || unit === criterion.unit) return [];
  if (criterion.unit === "1/h" && anHour.test(unit)) return [];
  const expected = criterion.unit === "1/h" ? "a number of parts an hour" : `a number in ${criterion.unit}`;
  const message = `The difference is in "${unit}", and ${criterion.measure} is in ${criterion.unit}.`;
  return [
    chooseIssue("worthwhile-form", message, { option: "--worthwhile", value: `${difference.value} ${unit}`, expected }),
  ];
}
