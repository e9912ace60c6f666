// The command `page`: writes scenarios and the engine into one HTML file that needs no network.
import type { Act } from "#cli/call/command.ts";
import { runName } from "#cli/call/runName.ts";
import { exitCode, exitCodeOf } from "#cli/machine/exitCode.ts";
import { readPageParts } from "#cli/machine/pageParts.ts";
import { version } from "#cli/machine/version.ts";
import { pageIssues, pagePlace } from "#cli/output/pagePlace.ts";
import { printIssues } from "#cli/output/printIssues.ts";
import { plainText } from "#foundation/plainText.ts";
import type { GivenScenario } from "#page/file/given.ts";
import { pageFile } from "#page/file/pageFile.ts";
import { questionOf } from "#report/page/questionOf.ts";
import { loadLessons } from "./loadLessons.ts";
import { loadScenarios, type LoadedScenario } from "./loadScenarios.ts";

export const page: Act = async (files, options, host) => {
  const { loaded, code } = loadScenarios(files, options, host);
  if (loaded.length === 0 || code !== exitCode.done) return code;
  const { lessons, code: lessonCode } = loadLessons(options, host);
  if (lessonCode !== exitCode.done) return lessonCode;
  const { set = [] } = options;
  const names = loaded.map(({ scenario }) => scenario.name);
  const call = [
    ...loaded.map(fileOf),
    ...set.map((setting) => `--set ${setting}`),
    ...lessons.map(({ file }) => `--lesson ${file}`),
  ].join(" ");
  const place = pagePlace(runName(names.join("-and-"), set), options, host);
  const issues = pageIssues(place, call, options, host);
  printIssues(issues, host);
  if (issues.length > 0) return exitCodeOf(issues);
  const title = loaded.length === 1 ? loaded[0]!.scenario.title : names.join(", ");
  const questions = loaded.length === 1 ? loaded.flatMap(({ text }) => questionOf(text) ?? []) : [];
  const given = { version, scenarios: loaded.map((one) => givenScenario(one, set)), lessons };
  const text = pageFile({ title, questions, call }, given, readPageParts());
  await host.writeFiles(place.folder, [{ name: place.name, text }]);
  if (options.quiet !== true)
    host.report(`${plainText(`${place.folder}/${place.name}`)} is written; open it in a browser\n`);
  return exitCode.done;
};

/** Without its folder: the page may leave this machine. */
const fileOf = ({ scenario: { name, call } }: LoadedScenario): string => call?.file ?? name;

function givenScenario(one: LoadedScenario, set: readonly string[]): GivenScenario {
  const { scenario, text, beside } = one;
  return { name: scenario.name, file: fileOf(one), text, beside: Object.fromEntries(beside), set };
}
