// The frame of the page: skip link, choice of scenario, answer, the places, licenses.
import { h, type ComponentChild } from "preact";
import { Answer } from "./answer.ts";
import type { Session } from "./session.ts";

interface FrameProps {
  readonly session: Session;
  readonly openLicenses: () => Promise<string>;
  readonly version: string;
}

export function Frame({ session }: FrameProps): ComponentChild {
  return h("main", { id: "main" }, h(Answer, { session }));
}
