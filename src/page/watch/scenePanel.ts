// The picture of the cell; it takes the keys of the scene, and a click chooses a resource.
import { h, type ComponentChild } from "preact";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { actOnKey } from "./keys.ts";
import type { Watched } from "./watched.ts";

interface ScenePanelProps {
  readonly watched: Watched;
  readonly units: UnitSystem;
}

export function ScenePanel({ watched }: ScenePanelProps): ComponentChild {
  return h("div", {
    class: "scene",
    tabIndex: 0,
    role: "application",
    "aria-label": "The cell",
    onKeyDown: (event: KeyboardEvent) => actOnKey(watched, event),
  });
}
