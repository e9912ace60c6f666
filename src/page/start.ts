// The script of the page: opens the session and shows the frame.
import { h, render } from "preact";
import { openAsker } from "#page/answer/asker.ts";
import type { Given } from "#page/file/given.ts";
import { Frame } from "#page/frame/frame.ts";
import { openSession } from "#page/frame/session.ts";

/** Called by the opener; `openLicenses` gives the text of the licenses of bundled packages. */
export function start(worker: Worker, given: Given, openLicenses: () => Promise<string>): void {
  const session = openSession(given, openAsker(worker));
  const place = document.getElementById("page")!;
  place.replaceChildren();
  render(h(Frame, { session, openLicenses, version: given.version }), place);
}
