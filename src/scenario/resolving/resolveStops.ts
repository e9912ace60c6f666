// From drafts of stops to stops: one for each station, with checks of names and of clearing.
import { didYouMean } from "#foundation/didYouMean.ts";
import { shiftAssumed } from "#scenario/values/defaults.ts";
import type { Path } from "#scenario/values/finding.ts";
import { settled, type Resolution, type ScenarioDraft } from "./resolution.ts";
import type { Scenario, StopSpec } from "#scenario/scenario.ts";
import { takeawayGroups, type ServerGroup } from "./takeawayGroups.ts";
import type { ListedStation } from "./stationList.ts";

type StopDraft = NonNullable<NonNullable<ScenarioDraft["stops"]>[number]>;

const EVERY_STATION = "every station";

/** Undefined where one of them could not be read; empty where there is none. */
export function resolveStops(
  listed: readonly ListedStation[],
  downstream: Pick<Scenario, "takeaway"> | undefined,
  resolution: Resolution,
): readonly StopSpec[] | undefined {
  const drafts = resolution.draft.stops ?? [];
  const stations = listed.map(({ name }) => name);
  const groups = takeawayGroups({ ...downstream, stations: listed });
  const stops = drafts.flatMap((draft, index) => {
    if (draft === undefined) return [undefined];
    const path = ["stops", index];
    checkResource(draft, path, [...stations, ...groups.map(({ name }) => name)], resolution);
    checkComing(draft, path, resolution);
    checkOperator(draft, path, resolution);
    checkShift(draft, path, resolution);
    return spelledOut(draft, stations, groups);
  });
  checkTwice(stations, resolution);
  checkClearing(drafts, listed, resolution);
  const read = stops.filter((stop) => stop !== undefined);
  return read.length === stops.length ? read : undefined;
}

/** Each station and each place of a server has its own random numbers for stops. */
function spelledOut(
  draft: StopDraft,
  stations: readonly string[],
  groups: readonly ServerGroup[],
): readonly (StopSpec | undefined)[] {
  const { name, resource, start, by, step } = draft;
  const [repair, comes] = [settled(draft.repair), comingOf(draft)];
  if (name === undefined || resource === undefined || by === undefined || step === undefined) return [undefined];
  if (start === undefined) return [undefined];
  if (repair === undefined || comes === undefined) return [undefined];
  const places = groups.find((group) => group.name === resource)?.places;
  const resources = resource === EVERY_STATION ? stations : (places ?? [resource]);
  const shift = draft.shift ?? shiftAssumed(by).value;
  return resources.map((each) => ({ name, resource: each, comes, start, repair, by, shift, step }));
}

function comingOf({ clock, between, cycles }: StopDraft): StopSpec["comes"] | undefined {
  if (cycles !== undefined) return { by: "cycles", cycles };
  const distribution = settled(between);
  return distribution === undefined || clock === undefined ? undefined : { by: clock, between: distribution };
}

function checkResource(
  { resource }: StopDraft,
  path: Path,
  others: readonly string[],
  { draft, report }: Resolution,
): void {
  const machines = draft.delivery?.kind === "continuous" ? ["plasticator"] : ["plasticator", "valve"];
  const known = [...machines, EVERY_STATION, ...others];
  if (resource === undefined || known.includes(resource)) return;
  const meant = resource === "screw" ? "plasticator" : didYouMean(resource, known);
  const expected = `one of ${known.map((each) => `\`${each}\``).join(", ")}`;
  report({
    code: "stop-resource",
    message: `There is no "${resource}" that could stop.`,
    expected,
    remedy: meant === undefined ? `Write ${expected}.` : `Did you mean \`${meant}\`?`,
    path: [...path, "resource"],
  });
}

function checkComing({ between, cycles }: StopDraft, path: Path, { has, report }: Resolution): void {
  const expected = "`between: 40 h` or `cycles: 5000`";
  const [byTime, byCycles] = [has([...path, "between"]), has([...path, "cycles"])];
  if (byTime && byCycles) {
    report({
      code: "stop-coming",
      message: "Both `between` and `cycles` are given.",
      expected,
      remedy: "Delete one of them.",
      path: [...path, "cycles"],
      at: "key",
    });
  } else if (!byTime && !byCycles) {
    report({
      code: "stop-coming",
      message: "Neither `between` nor `cycles` is given.",
      expected,
      remedy: `Add ${expected}.`,
      path: [...path, "between"],
    });
  }
  if (between?.kind === "fixed" && between.value <= 0 && cycles === undefined) {
    report({
      code: "not-positive",
      message: "A stop that comes back at once never ends.",
      expected: "a time above zero",
      remedy: "Write the time from the end of one stop to the next.",
      path: [...path, "between"],
    });
  }
}

/** Where no calendar is given nothing is ever off shift. */
function checkShift({ shift }: StopDraft, path: Path, { has, report }: Resolution): void {
  if (shift === undefined || has(["calendar"])) return;
  report({
    code: "shift-unused",
    message: "Without a `calendar` there is no time off shift: `shift` changes nothing.",
    remedy: "Delete the key, or add a `calendar`.",
    path: [...path, "shift"],
    at: "key",
    severity: "hint",
  });
}

function checkOperator({ by }: StopDraft, path: Path, { draft, report }: Resolution): void {
  if (by !== "operator" || draft.crew?.operators !== 0) return;
  report({
    code: "operator-missing",
    message: "An operator is to repair this stop, but there is none.",
    expected: "`crew: { operators: 1 }` or more",
    remedy: "Add `crew: { operators: 1 }`, or write `by: itself`.",
    path: [...path, "by"],
    fate: "cell",
  });
}

/** Streams and tables go by the name: two stops of one resource need two. */
function checkTwice(stations: readonly string[], { draft, report }: Resolution): void {
  const seen = new Set<string>();
  for (const [index, entry] of (draft.stops ?? []).entries()) {
    const { name, resource } = entry ?? {};
    if (name === undefined || resource === undefined) continue;
    const own = resource === EVERY_STATION ? stations : [resource];
    if (own.some((each) => seen.has(JSON.stringify([name, each])))) {
      report({
        code: "stop-twice",
        message: `Another stop of this resource is called "${name}" already.`,
        expected: "a name of its own",
        remedy: "Rename one of them.",
        path: ["stops", index, "name"],
      });
    }
    for (const each of own) seen.add(JSON.stringify([name, each]));
  }
}

/** Under `hold` and `scrap` a hanging parison is lost and must be cleared. */
function checkClearing(
  drafts: readonly (StopDraft | undefined)[],
  listed: readonly ListedStation[],
  { draft, report }: Resolution,
): void {
  if (!drafts.some((stop) => stop?.step !== undefined && stop.step !== "finish")) return;
  for (const { first, path, draft: station } of listed) {
    const clear = station.steps?.clear;
    if (!first || station.steps === undefined) continue;
    if (clear === undefined) {
      report({
        code: "clear-missing",
        message: "A stop may lose this station's shot, and nothing says how the mold is cleared.",
        expected: "`clear: { time: 90 s, by: operator }`",
        remedy: "Add it to the steps, or write `step: finish` for every stop.",
        path: [...path, "steps", "clear"],
      });
    } else if (clear.by === "operator" && draft.crew?.operators === 0) {
      report({
        code: "operator-missing",
        message: "An operator is to clear the mold, but there is none.",
        expected: "`crew: { operators: 1 }` or more",
        remedy: "Add `crew: { operators: 1 }`, or write `by: machine`.",
        path: [...path, "steps", "clear", "by"],
        fate: "cell",
      });
    }
  }
}
