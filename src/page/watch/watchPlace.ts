// The place Watch: the cell at one time, its timing chart, the words of one resource, and the controls.
import { useEffect, useMemo } from "preact/hooks";
import { h, type ComponentChild } from "preact";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { startClock } from "./clock.ts";
import { Controls } from "./controls.ts";
import { KeyHelp } from "./keyHelp.ts";
import { ScenePanel } from "./scenePanel.ts";
import { TimeRange } from "./timeRange.ts";
import { TimingPanel } from "./timingPanel.ts";
import { openWatched } from "./watched.ts";
import type { WatchedRun } from "./watchedRun.ts";
import { WordsPanel } from "./wordsPanel.ts";

interface WatchPlaceProps {
  readonly run: WatchedRun;
  readonly units: UnitSystem;
}

export function WatchPlace({ run, units }: WatchPlaceProps): ComponentChild {
  const watched = useMemo(() => openWatched(run), [run]);
  useEffect(() => startClock(watched), [watched]);
  return h(
    "div",
    { class: "watch" },
    h("div", { class: "stage" }, h(ScenePanel, { watched, units }), h(WordsPanel, { watched, units })),
    h(Controls, { watched }),
    h(TimeRange, { watched }),
    h(TimingPanel, { watched }),
    h(KeyHelp, {}),
    // Silent while the run plays: the sentence changes only with a step.
    h("p", { class: "spoken", role: "status" }, watched.said),
  );
}
