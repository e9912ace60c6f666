// One self-contained HTML file without scripts or requests; the same findings give the same bytes.
import { cautions } from "#report/words/cautions.ts";
import { element, Markup, type Child } from "#report/charts/markup.ts";
import { pageStyle } from "./pageStyle.ts";
import type { PageWarnings } from "./pageWarnings.ts";

export interface Section {
  /** Unique on the page. */
  readonly id: string;
  readonly heading: string;
  readonly body: readonly Child[];
}

export interface PageParts {
  readonly title: string;
  /** The questions of the scenarios. */
  readonly questions: readonly string[];
  /** The answer, then what is behind it and how sure it is: a paragraph each. */
  readonly finding: readonly string[];
  /** Right below the answer. */
  readonly warnings: PageWarnings;
  readonly sections: readonly Section[];
  readonly version: string;
}

/** Blocks scripts, requests, frames and forms, whatever a text holds. */
const policy = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

export function htmlPage({ title, questions, finding, warnings, sections, version }: PageParts): string {
  const head = element(
    "head",
    {},
    element("meta", { charset: "utf-8" }),
    element("meta", { "http-equiv": "Content-Security-Policy", content: policy }),
    element("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
    element("meta", { name: "generator", content: `blowcell ${version}` }),
    element("title", {}, title),
    Markup.style(pageStyle),
  );
  const main = element(
    "main",
    {},
    element("h1", {}, title),
    ...questions.map((question) => element("p", { class: "quiet" }, question)),
    ...finding.slice(0, 1).map((answer) => element("p", { class: "finding" }, answer)),
    ...warningBoxes(warnings),
    ...finding.slice(1).map((paragraph) => element("p", {}, paragraph)),
    contents(sections),
    ...sections.map((section) => sectionMarkup(section)),
  );
  const body = element("body", {}, element("div", { class: "page" }, main, footer(version)));
  return `<!doctype html>\n${element("html", { lang: "en" }, head, body).code}\n`;
}

function warningBoxes({ warnings, unusual }: PageWarnings): readonly Markup[] {
  const box = (kind: string, lines: readonly string[]): readonly Markup[] => {
    const items = lines.map((line) => element("li", {}, line));
    return lines.length === 0 ? [] : [element("ul", { class: kind }, ...items)];
  };
  return [...box("warnings", warnings), ...box("unusual", unusual)];
}

function contents(sections: readonly Section[]): Markup {
  const items = sections.map(({ id, heading }) => element("li", {}, element("a", { href: `#${id}` }, heading)));
  return element("nav", { "aria-label": "Contents" }, element("ul", {}, ...items));
}

/** `level` of its heading: h3 for a section within another one. */
export function sectionMarkup({ id, heading, body }: Section, level: "h2" | "h3" = "h2"): Markup {
  return element(
    "section",
    { id, "aria-labelledby": `${id}-heading` },
    element(level, { id: `${id}-heading` }, heading),
    ...body,
  );
}

function footer(version: string): Markup {
  return element(
    "footer",
    {},
    element("p", {}, cautions),
    element("p", {}, "To watch the cell, change it and promise an order in a browser: blowcell page FILE"),
    element("p", {}, `blowcell ${version}`),
  );
}
