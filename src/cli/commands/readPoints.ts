// Reads the scenario of every point; what the reader refuses becomes the outcome of its point.
import type { Issue } from "#foundation/issue.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Options } from "#cli/call/command.ts";
import { calledSettings, runTexts } from "#cli/call/options.ts";
import { checksum } from "#cli/machine/checksum.ts";
import type { Host } from "#cli/machine/host.ts";
import { version } from "#cli/machine/version.ts";
import { settingsOfPoint, type Grid, type Point } from "#cli/sweep/points.ts";
import { readFile, scenarioName } from "./loadScenarios.ts";

export interface ReadPoint extends Point {
  readonly key: string;
  readonly scenario: Scenario | undefined;
  readonly issues: readonly Issue[];
}

/** The text of the file is read again at each point only where the machine does not keep it. */
export function pointReader(file: string, grid: Grid, options: Options, host: Host): (point: Point) => ReadPoint {
  const content = host.readText(file);
  const known: Host = { ...host, readText: (path) => (path === file ? content : host.readText(path)) };
  const name = options.name?.trim() ?? scenarioName(file);
  return (point) => {
    const set = settingsOfPoint(grid.paths, point);
    const variant = { name, set, text: set.join("; "), option: "--vary" } as const;
    const { scenario, issues } = readFile({ file, name, variant }, options, known);
    // Where the point comes from does not change its outcome.
    const { call, ...simulated } = scenario ?? { call: undefined };
    const key = checksum(JSON.stringify([version, simulated, issues, call === undefined ? set : []]));
    return { ...point, scenario, issues, key };
  };
}

/** The scenario that stands for the sweep: with the settings that all points share. */
export function sharedScenario({ scenario }: ReadPoint, options: Options): Scenario | undefined {
  if (scenario?.call === undefined) return undefined;
  const settings = calledSettings(options).flatMap(({ option, text }) => (option === "--set" ? [text] : []));
  const varied = (options.vary ?? []).map((text) => `vary ${text}`);
  return { ...scenario, call: { ...scenario.call, settings, options: [...runTexts(options), ...varied] } };
}
