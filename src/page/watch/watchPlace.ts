// The place Watch: the cell at one time, its timing chart, the words of one resource, and the controls.
import { useEffect, useMemo } from "preact/hooks";
import { h, type ComponentChild } from "preact";
import type { OpenedScenario } from "#page/answer/openScenario.ts";
import { startClock } from "./clock.ts";
import { Controls } from "./controls.ts";
import { KeyHelp } from "./keyHelp.ts";
import { ScenePanel } from "./scenePanel.ts";
import { StretchChoice } from "./stretchChoice.ts";
import { TimeRange } from "./timeRange.ts";
import { TimingPanel } from "./timingPanel.ts";
import { openWatched } from "./watched.ts";
import { WordsPanel } from "./wordsPanel.ts";

interface WatchPlaceProps {
  readonly opened: OpenedScenario;
  /** Runs the cell for another stretch. */
  readonly showFrom: (seconds: number) => void;
}

export function WatchPlace({ opened: { record, cycle, scenario }, showFrom }: WatchPlaceProps): ComponentChild {
  const watched = useMemo(() => openWatched(record), [record]);
  useEffect(() => startClock(watched), [watched]);
  return h(
    "div",
    { class: "watch" },
    h(ScenePanel, { watched }),
    h(WordsPanel, { watched }),
    h(Controls, { watched }),
    h(TimeRange, { watched }),
    h(StretchChoice, { record, scenario, showFrom }),
    h(TimingPanel, { watched, cycle }),
    h(KeyHelp, {}),
    // Silent while the run plays: the sentence changes only with a step.
    h("p", { class: "spoken", role: "status" }, watched.said),
  );
}
