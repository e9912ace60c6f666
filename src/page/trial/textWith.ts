// The text of a scenario with settings written into it; comments and order are kept.
import { applySettings } from "#scenario/reading/applySettings.ts";
import { ScenarioText } from "#scenario/reading/scenarioText.ts";
import { Source } from "#scenario/reading/source.ts";
import { parseText } from "#scenario/reading/yamlText.ts";
import type { Tried } from "./readGiven.ts";

/** The text as it is where it has no settings or cannot be read. */
export function textWith({ given, set }: Tried): string {
  const all = [...given.set, ...set];
  const source = new Source(given.file, given.text.replace(/^\uFEFF/u, ""));
  const { document } = parseText(source);
  if (document === undefined || all.length === 0) return given.text;
  applySettings(new ScenarioText(document, source), { set: all }, (file) => given.beside[file]);
  return document.toString({ lineWidth: 0 });
}
