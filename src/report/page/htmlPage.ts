// One self-contained HTML file without scripts or requests; the same findings give the same bytes.
import { cautions } from "#report/words/cautions.ts";
import { element, Markup, type Child } from "#report/charts/markup.ts";
import { pageStyle } from "./pageStyle.ts";

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
  /** The findings and how sure they are, the most important first: a paragraph each. */
  readonly finding: readonly string[];
  readonly sections: readonly Section[];
  readonly version: string;
}

/** Blocks scripts, requests, frames and forms, whatever a text holds. */
const policy = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

export function htmlPage({ title, questions, finding, sections, version }: PageParts): string {
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
    ...finding.map((paragraph, i) => element("p", { class: i === 0 ? "finding" : undefined }, paragraph)),
    contents(sections),
    ...sections.map((section) => sectionMarkup(section)),
  );
  const body = element("body", {}, element("div", { class: "page" }, main, footer(version)));
  return `<!doctype html>\n${element("html", { lang: "en" }, head, body).code}\n`;
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
  return element("footer", {}, element("p", {}, cautions), element("p", {}, `blowcell ${version}`));
}
