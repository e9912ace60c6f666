// What an order uses up to its last part: resin, regrind, energy, operator hours and cost, by run.
import { costRules, type CostedHour } from "#analysis/indicators/cost.ts";
import { costStudy, missingKeys } from "#analysis/indicators/costStudy.ts";
import { cellElements } from "#analysis/indicators/kpiRows.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { CELL } from "#analysis/replication/measures.ts";
import { meanInterval } from "#analysis/statistics/interval.ts";
import { singleRunRange } from "#analysis/statistics/singleRunRange.ts";
import { missingMass } from "#analysis/window/missingMass.ts";
import { stationWindows, type StationWindow } from "#analysis/window/stationWindow.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Order } from "./order.ts";
import type { CampaignAnswer, OrderAnswer } from "./orderAnswer.ts";
import type { OrderStudy, UseSummary } from "./orderStudy.ts";

const secondsPerHour = 3600;
const joulesPerKilowattHour = 3_600_000;

/** Every quantity of promise.csv. */
export const orderQuantityMeanings = {
  "time to finish": "From the start of the order to its last wanted part; with a calendar off-shift hours count.",
  "good parts at the due date": "Good parts that the cell makes by the due date if it goes on after the order.",

  resin: "New resin in the feed; without `regrind` all melt.",
  "regrind used": "Regrind that goes back into the feed.",
  "surplus regrind": "Regrind that does not go back into the feed.",
  "drive energy": "Electricity of the drive of the screw.",
  "operator hours on shift": "Hours of all operators in their work shifts, without breaks, up to the last part.",
  "operator hours at work": "Hours of all operators in tasks.",
  cost: "Cost of all items with a rate, up to the last part; the unit is the currency.",
} as const;

type Use = keyof typeof orderQuantityMeanings;

/** One campaign of one run with its cell; windows are those of the mean run. */
interface Made {
  readonly scenario: Scenario;
  readonly windows: readonly StationWindow[];
  readonly answer: CampaignAnswer;
}

/** A use without its inputs in one of the campaigns is left out. */
export function orderUses(order: Order, answers: readonly OrderAnswer[]): Pick<OrderStudy, "uses" | "missing"> {
  const windows = order.campaigns.map(({ scenario }, i) =>
    meanWindows(
      scenario,
      answers.map(({ campaigns }) => campaigns[i]!),
    ),
  );
  const runs = answers.map(({ campaigns }) =>
    campaigns.map((answer, i): Made => ({ scenario: order.campaigns[i]!.scenario, windows: windows[i]!, answer })),
  );
  const { operators, costs, regrindLimit } = order.campaigns[0]!.scenario;
  const hasRegrind = regrindLimit !== undefined;
  const uses = [
    useOf("resin", "kg", runs, resin),
    ...(hasRegrind ? [useOf("regrind used", "kg", runs, (made) => measured(made, "regrind used"))] : []),
    useOf("surplus regrind", "kg", runs, surplus),
    useOf("drive energy", "kWh", runs, driveEnergy),
    ...(operators > 0
      ? [
          useOf("operator hours on shift", "h", runs, ({ answer }) => hours(answer.operatorSeconds.onShift)),
          useOf("operator hours at work", "h", runs, ({ answer }) => hours(answer.operatorSeconds.worked)),
        ]
      : []),
    ...(costs ? [useOf("cost", costs.currency, runs, cost)] : []),
  ].flatMap((use) => use ?? []);
  return { uses, missing: missingOf(runs[0]!, uses) };
}

function meanWindows(scenario: Scenario, answers: readonly CampaignAnswer[]): readonly StationWindow[] {
  const melt = answers.flatMap(({ measures }) => measures.find(isMelt)?.value ?? []);
  const rate = melt.length === 0 ? undefined : meanInterval(melt).mean / secondsPerHour;
  return stationWindows(scenario, idealCycle(scenario), rate);
}

const isMelt = ({ resource, measure }: CampaignAnswer["measures"][number]): boolean =>
  resource === CELL && measure === "melt per hour";

function useOf(
  quantity: Use,
  unit: string,
  runs: readonly (readonly Made[])[],
  amount: (made: Made) => number | undefined,
): UseSummary | undefined {
  const values = runs.map((campaigns) => {
    const each = campaigns.map(amount);
    return each.reduce<number | undefined>(
      (sum, value) => (sum === undefined || value === undefined ? undefined : sum + value),
      0,
    );
  });
  const known = values.filter((value) => value !== undefined);
  return known.length < values.length ? undefined : summaryOf(quantity, unit, known);
}

export function summaryOf(quantity: string, unit: string, values: readonly number[]): UseSummary {
  return { quantity, unit, values, mean: meanInterval(values), single: singleRunRange(values) };
}

const hours = (seconds: number): number => seconds / secondsPerHour;

function resin({ answer }: Made): number | undefined {
  return answer.resin ? answer.resin.bought * hours(answer.seconds) : undefined;
}

function surplus({ answer }: Made): number | undefined {
  return answer.resin ? answer.resin.surplus * hours(answer.seconds) : undefined;
}

function measured({ answer }: Made, name: string): number | undefined {
  const found = answer.measures.find(({ resource, measure }) => resource === CELL && measure === name);
  return found && found.value * hours(answer.seconds);
}

function driveEnergy({ scenario, windows, answer }: Made): number | undefined {
  const { measures, resin: flow, seconds } = answer;
  const hour: CostedHour = { scenario, windows, measures, resin: flow, planned: cellElements(answer).PBT / seconds };
  const joules = costRules.find(({ rate }) => rate === "energy")?.amount(hour);
  return joules === undefined ? undefined : (joules * hours(seconds)) / joulesPerKilowattHour;
}

/** Undefined where no item has a rate and an amount. */
function cost(made: Made): number | undefined {
  const found = costsOf(made);
  return found && found.rows.length > 0 ? found.perHourOf[0]! * hours(made.answer.seconds) : undefined;
}

function costsOf({ scenario, windows, answer }: Made): ReturnType<typeof costStudy> {
  return costStudy({ ...scenario, run: { ...scenario.run, length: answer.seconds, warmup: 0 } }, [answer], windows);
}

/** Each item once, with the keys that it lacks in any of the campaigns. */
function missingOf(run: readonly Made[], uses: readonly UseSummary[]): OrderStudy["missing"] {
  const keys = new Map<string, readonly string[]>();
  for (const each of run.flatMap((made) => missingIn(made, uses))) {
    keys.set(each.item, [...new Set([...(keys.get(each.item) ?? []), ...each.keys])]);
  }
  return [...keys].map(([item, all]) => ({ item, keys: all }));
}

function missingIn(made: Made, uses: readonly UseSummary[]): OrderStudy["missing"] {
  const { scenario, windows } = made;
  const { stations } = scenario;
  const isLeftOut = (use: Use): boolean => uses.every(({ quantity }) => quantity !== use);
  const energy = costRules.find(({ rate }) => rate === "energy")!;
  const isRate = (key: string): boolean => key.startsWith("costs.");
  return [
    ...(isLeftOut("resin") ? [{ item: "resin", keys: missingMass(stations) }] : []),
    ...(isLeftOut("drive energy")
      ? [{ item: "drive energy", keys: missingKeys(energy, scenario, windows).filter((key) => !isRate(key)) }]
      : []),
    ...(costsOf(made)?.missing ?? [{ item: "cost", keys: ["costs"] }]),
  ];
}
