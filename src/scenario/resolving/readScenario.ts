// Reads a scenario's text to a Scenario; never throws and reports all issues together.
import type { Issue } from "#foundation/issue.ts";
import type { Finding } from "#scenario/values/finding.ts";
import { applySettings } from "#scenario/reading/applySettings.ts";
import type { Settings } from "#scenario/reading/settings.ts";
import { assumptions } from "./assumed.ts";
import type { Assumption } from "#scenario/values/assumption.ts";
import { readColumns } from "#scenario/reading/readColumns.ts";
import type { ReadText } from "#scenario/reading/readText.ts";
import { readGlossary } from "#scenario/reading/reading.ts";
import { resolveScenario } from "./resolveScenario.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { ScenarioText } from "#scenario/reading/scenarioText.ts";
import { Source } from "#scenario/reading/source.ts";
import { isMapping } from "#scenario/values/key.ts";
import { parseText } from "#scenario/reading/yamlText.ts";

export interface ReadOptions extends Settings {
  /** The file's name without folder and ending. */
  readonly name: string;
  /** Name of the file in issues. */
  readonly file: string;
  /** Text of a file beside the scenario, or undefined where it cannot be read. */
  readonly readText?: ReadText;
}

export interface ScenarioReading {
  /** Absent where any issue is an error. */
  readonly scenario?: Scenario;
  /** In the order of the text. */
  readonly issues: readonly Issue[];
  /** The assumptions for absent keys; empty where the scenario is refused. */
  readonly assumed: readonly Assumption[];
}

/** A reading with the places of its values, for findings of later checks. */
export interface PlacedReading extends ScenarioReading {
  readonly toIssue?: (finding: Finding) => Issue;
}

export function readScenario(text: string, options: ReadOptions): ScenarioReading {
  const { scenario, issues, assumed } = readPlaced(text, options);
  return scenario === undefined ? { issues, assumed } : { scenario, issues, assumed };
}

export function readPlaced(text: string, options: ReadOptions): PlacedReading {
  // A byte order mark is no part of the first column.
  const source = new Source(options.file, text.replace(/^\uFEFF/u, ""));
  const parsed = parseText(source);
  if (parsed.document === undefined)
    return { issues: parsed.issues.length > 0 ? parsed.issues : [nothing(source)], assumed: [] };
  const tree = new ScenarioText(parsed.document, source);
  const settingIssues = applySettings(tree, options, options.readText);
  const content = tree.content();
  const read = readGlossary(content);
  const columns = readColumns(read.draft, options.readText);
  const resolved = isMapping(content) ? resolveScenario(columns.draft, content, options.name) : { findings: [] };
  const findings = [...read.findings, ...columns.findings, ...resolved.findings];
  const toIssue = (finding: Finding): Issue => tree.toIssue(finding);
  const found = findings.slice(0, mostFaults).map(toIssue);
  const rest = Math.max(0, findings.length - mostFaults);
  const issues = [...parsed.issues, ...settingIssues, ...found, ...(rest > 0 ? [moreFaults(rest, source)] : [])];
  const inOrder = withoutRepeats(issues).toSorted(inOrderOfText(options.file));
  const refused = issues.some((issue) => issue.severity === "error");
  if (resolved.scenario === undefined || refused) return { issues: inOrder, assumed: [], toIssue };
  return { scenario: resolved.scenario, issues: inOrder, assumed: assumptions(content, tree), toIssue };
}

/** A setting for several places has one fault, not one for each. */
function withoutRepeats(issues: readonly Issue[]): readonly Issue[] {
  const keyOf = ({ place, message }: Issue, i: number): string =>
    place?.file.startsWith("--") === true ? JSON.stringify([place, message]) : String(i);
  const keys = issues.map(keyOf);
  return issues.filter((_, i) => keys.indexOf(keys[i]!) === i);
}

/** A text with more issues is probably not a scenario. */
const mostFaults = 100;

function moreFaults(rest: number, source: Source): Issue {
  const message = `${rest} more faults are not shown.`;
  const remedy = "Put these right first.";
  return { code: "more-faults", severity: "error", fate: "file", path: "", place: source.placeOf(0), message, remedy };
}

function nothing(source: Source): Issue {
  const remedy = "Begin with a shipped scenario.";
  return {
    code: "file-empty",
    severity: "error",
    fate: "file",
    path: "",
    place: source.placeOf(0),
    message: "The text holds only comments.",
    remedy,
  };
}

/** Those of the scenario's own text first, then those of other texts one by one. */
function inOrderOfText(file: string): (one: Issue, other: Issue) => number {
  return ({ place: one }, { place: other }) => {
    if (one === undefined || other === undefined) return 0;
    if (one.file === other.file) return one.line - other.line || one.column - other.column;
    if (one.file === file || other.file === file) return one.file === file ? -1 : 1;
    return one.file < other.file ? -1 : 1;
  };
}
