// The command `new`: writes a commented starter scenario, and never over a file that is there.
import type { Act, Options } from "#cli/call/command.ts";
import { exitCode } from "#cli/machine/exitCode.ts";
import type { Host } from "#cli/machine/host.ts";
import { plainText } from "#foundation/plainText.ts";
import { safeName } from "#cli/machine/safeName.ts";
import { refuse } from "#cli/output/printIssues.ts";
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import { deliveryKinds } from "#scenario/keys/deliveryKeys.ts";
import { mostStations } from "#scenario/keys/stationKeys.ts";
import { starterScenario } from "#scenario/starter/starterScenario.ts";
import type { StarterOptions } from "#scenario/starter/starterLines.ts";

export const newIssueCodes = {
  "file-exists": ["a file of that name is there already", "Choose another name; nothing is overwritten."],
  "folder-missing": ["the folder for the new file is not there", "Make it first, or name another one."],
  "file-name": ["the name is none that a scenario file can have", "Choose a name such as `mine.yaml`."],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

type Kind = StarterOptions["kind"];

const usualKind: Kind = "reciprocating-screw";

export const newScenario: Act = async ([path = ""], options, host) => {
  const stations = stationsOf(options);
  const kind = kindOf(options);
  const issues = [...placeIssues(path, host), stations, kind].filter((each) => typeof each === "object");
  if (issues.length > 0 || typeof stations === "object" || typeof kind === "object") return refuse(issues, host);
  const { folder, name } = partsOf(path);
  const text = starterScenario({ stations, kind }, path);
  await host.writeFiles(folder, [{ name, text, isNew: true }]);
  if (options.quiet !== true)
    host.report(plainText(`${path} is written; blowcell check ${path} shows its ideal cycle`).concat("\n"));
  return exitCode.done;
};

/** "." where the path names no folder. */
function partsOf(path: string): { readonly folder: string; readonly name: string } {
  const name = path.replace(/^.*[/\\]/u, "");
  const folder = path.slice(0, path.length - name.length);
  return { folder: folder === "" ? "." : folder, name };
}

function placeIssues(path: string, host: Host): readonly Issue[] {
  const { folder, name } = partsOf(path);
  const there = host.whatIs(path);
  if (there === "folder") {
    return [
      issueOf(
        "file-is-folder",
        `${path} is a folder`,
        `Name a file in it, such as ${path.replace(/[/\\]+$/u, "")}/mine.yaml.`,
      ),
    ];
  }
  if (there !== undefined)
    return [issueOf("file-exists", `${path} is there already`, "Choose another name; nothing is overwritten.")];
  if (name !== safeName(name) || !/.\.ya?ml$/iu.test(name)) {
    const plain = safeName(name).replace(/(?:\.\w*)?$/u, ".yaml");
    return [issueOf("file-name", `${path} cannot be the name of a scenario file`, `Write a name such as ${plain}.`)];
  }
  if (host.whatIs(folder) === "folder") return [];
  return [issueOf("folder-missing", `there is no folder ${folder}`, "Make it first, or name another one.")];
}

function stationsOf({ stations = "2" }: Options): number | Issue {
  const count = Number(stations);
  if (/^\d+$/u.test(stations) && count >= 1 && count <= mostStations) return count;
  const expected = `a whole number from 1 to ${mostStations}`;
  return {
    ...issueOf("option-value", "--stations is no number of stations", `Write ${expected}.`),
    value: stations,
    expected,
  };
}

function kindOf({ kind = usualKind }: Options): Kind | Issue {
  const known = deliveryKinds.find((each) => each === kind);
  if (known !== undefined) return known;
  const meant = didYouMean(kind, deliveryKinds);
  const expected = `one of ${deliveryKinds.join(", ")}`;
  const remedy = meant === undefined ? `Write ${expected}.` : `Did you mean \`${meant}\`?`;
  return { ...issueOf("option-value", "--kind is no kind of melt delivery", remedy), value: kind, expected };
}

function issueOf(code: string, message: string, remedy: string): Issue {
  return { code, severity: "error", path: "", message, remedy, fate: "file" };
}
