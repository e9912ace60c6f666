// The page as one HTML file: what the command gives, the compressed parts, and a policy that blocks every request.
import { element, type Markup } from "#report/charts/markup.ts";
import { pageStyle } from "#report/page/pageStyle.ts";
import { pictureStyle } from "#report/picture/pictureStyle.ts";
import { frameStyle } from "./frameStyle.ts";
import { learnStyle } from "./learnStyle.ts";
import type { Given } from "./given.ts";

/** Made by the build. */
export interface PageParts {
  /** The script that opens the others, as text. */
  readonly opener: string;
  /** Compressed with gzip, in base64. */
  readonly program: string;
  readonly licenses: string;
  readonly course: string;
  /** Of the scripts that may run, as a policy names them: `'sha256-…'`. */
  readonly hashes: readonly string[];
}

export interface PageHead {
  readonly title: string;
  /** Shown until the scripts run, and where they cannot. */
  readonly questions: readonly string[];
  /** The call that wrote the page. */
  readonly call: string;
}

const noScript = "This page needs scripts. Open it in a browser that runs them.";

export function pageFile({ title, questions, call }: PageHead, given: Given, parts: PageParts): string {
  const policy = [
    "default-src 'none'",
    `script-src ${parts.hashes.join(" ")} 'wasm-unsafe-eval'`,
    "worker-src blob:",
    "style-src 'unsafe-inline'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
  const head = [
    element("meta", { charset: "utf-8" }),
    element("meta", { "http-equiv": "Content-Security-Policy", content: policy }),
    element("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
    originOf(call),
    element("title", {}, title),
  ];
  const waiting = element(
    "div",
    { id: "page", class: "page" },
    element("main", {}, element("h1", {}, title), ...questions.map((each) => element("p", { class: "quiet" }, each))),
    element("noscript", {}, element("p", {}, noScript)),
  );
  return [
    `<!doctype html>\n<html lang="en"><head>${head.map(({ code }) => code).join("")}`,
    `<style>${[pageStyle, pictureStyle, frameStyle, learnStyle].join("\n")}</style></head>\n<body>${waiting.code}`,
    data("given", "application/json", JSON.stringify(given)),
    ...(["program", "licenses", "course"] as const).map((part) => data(part, "text/plain", parts[part])),
    `<script>${parts.opener}</script></body></html>\n`,
  ].join("\n");
}

/** By this a later call knows the page again; a text without a call matches every page. */
export function isPageOf(text: string, call = ""): boolean {
  const { code } = originOf(call);
  return text.slice(0, text.indexOf("<title>")).includes(call === "" ? code.slice(0, -`">`.length) : code);
}

const originOf = (call: string): Markup => element("meta", { name: "generator", content: `blowcell page ${call}` });

/** A block that no browser runs; nothing in it can end it. */
function data(id: string, type: string, text: string): string {
  return `<script type="${type}" id="${id}">${text.replaceAll("<", "\\u003c")}</script>`;
}
