// The keys of the scene, listed from their own table.
import { h, type ComponentChild } from "preact";
import { sceneKeys } from "./keys.ts";

export function KeyHelp(): ComponentChild {
  return h(
    "details",
    { class: "keys" },
    h("summary", {}, "Keys"),
    h("p", {}, "While the picture or the chart has the focus:"),
    h(
      "dl",
      {},
      sceneKeys.map(({ shown, meaning }) => [
        h(
          "dt",
          {},
          shown.map((key, i) => [i > 0 ? " " : "", h("kbd", {}, key)]),
        ),
        h("dd", {}, meaning),
      ]),
    ),
  );
}
