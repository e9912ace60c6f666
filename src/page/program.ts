// The script of the page, which is also that of its worker: both share most of the code, so one text is smaller than two.
import { h, render } from "preact";
import { config } from "zod/mini";
import { openAsker } from "#page/answer/asker.ts";
import { reply } from "#page/answer/reply.ts";
import type { Asked } from "#page/answer/answers.ts";
import type { Course, Given } from "#page/file/given.ts";
import { Frame } from "#page/frame/frame.ts";
import { openSession } from "#page/frame/session.ts";

// Otherwise zod tries whether it may make functions from text, which the policy of the page forbids and reports.
config({ jitless: true });

/** Called by the opener; `openPart` gives the text of a compressed part: the licenses of bundled packages, or the shipped lessons. */
export function start(worker: Worker, given: Given, openPart: (part: "licenses" | "course") => Promise<string>): void {
  const session = openSession(given, openAsker(worker), async () => JSON.parse(await openPart("course")) as Course);
  const openLicenses = (): Promise<string> => openPart("licenses");
  const place = document.getElementById("page")!;
  place.replaceChildren();
  render(h(Frame, { session, openLicenses, version: given.version }), place);
}

/** A worker has no document: there the script answers. */
if (typeof document === "undefined")
  self.addEventListener("message", ({ data }: MessageEvent<Asked>) => self.postMessage(reply(data)));
