// Finds where a page goes, and refuses a place where something else would be lost.
import type { Options } from "#cli/call/command.ts";
import type { Host } from "#cli/machine/host.ts";
import { safeName } from "#cli/machine/safeName.ts";
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import { isPageOf } from "#page/file/pageFile.ts";

export const pageIssueCodes = {
  "page-other": [
    "the file is a page of a different call",
    "Add --replace to replace it, or name another file with --out.",
  ],
  "page-other-file": [
    "a file that is no page has the name that the page needs",
    "Move the file, add --replace to overwrite it, or name another file with --out.",
  ],
  "page-name": ["the name is none that a page can have", "Choose a name such as `cell.html`."],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

export interface PagePlace {
  readonly folder: string;
  readonly name: string;
}

const usualName = "page.html";

/** `--out` names a folder, or a file if it ends in `.html`; without it the page is beside the reports of a run. */
export function pagePlace(nameOfRun: string, { out }: Options, host: Host): PagePlace {
  if (out === undefined) return { folder: `reports/${nameOfRun}`, name: usualName };
  const name = out.replace(/^.*[/\\]/u, "");
  if (!/\.html?$/iu.test(name) || host.whatIs(out) === "folder") return { folder: out, name: usualName };
  const folder = out.slice(0, out.length - name.length);
  return { folder: folder === "" ? "." : folder.replace(/(?<=.)[/\\]$/u, ""), name };
}

/** `call` is what the page was asked for; a page of the same call is replaced. */
export function pageIssues(
  { folder, name }: PagePlace,
  call: string,
  { replace }: Options,
  host: Host,
): readonly Issue[] {
  const path = `${folder}/${name}`;
  if (name !== safeName(name)) return [issueOf("page-name", `${path} cannot be the name of a page`, name)];
  if (replace === true || host.whatIs(path) !== "other") return [];
  const read = host.readText(path);
  const text = "text" in read ? read.text : "";
  if (isPageOf(text, call)) return [];
  return isPageOf(text)
    ? [issueOf("page-other", `${path} is a page of a different call`)]
    : [issueOf("page-other-file", `${path} is no page of blowcell`)];
}

function issueOf(code: keyof typeof pageIssueCodes, message: string, value?: string): Issue {
  const [, remedy] = pageIssueCodes[code];
  return {
    code,
    severity: "error",
    path: "",
    message,
    ...(value === undefined ? {} : { value }),
    remedy,
    fate: "file",
  };
}
