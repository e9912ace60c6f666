// The name of a resource, its state in words, and a band with the look of that state, as in the timing chart.
import { fittedWords, widthOfWords, words } from "#report/charts/chart.ts";
import { element, type Child } from "#report/charts/markup.ts";
import { filledBox } from "#report/charts/patterns.ts";
import type { SceneResource } from "#report/scene/scene.ts";
import { stateLook } from "#report/words/stateLook.ts";
import { screenName } from "#report/words/tradeWords.ts";

export interface Place {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

/** Height with its band. */
export const plateHeight = 44;
export const linePitch = 16;

const bandHeight = 9;

type Named = Pick<SceneResource, "name" | "state" | "kind" | "progress" | "until">;

interface PlateWords {
  /** Quiet words beside the name. */
  readonly remark?: string;
  /** Instead of the bare state. */
  readonly state?: string;
}

export function statePlate(
  id: string,
  resource: Named,
  place: Place,
  { remark = "", state = resource.state }: PlateWords = {},
): readonly Child[] {
  const { x, y, width } = place;
  return [
    words(fittedWords(screenName(resource.name), width - widthOfWords(remark) - 6), x, y + 12, { style: "name" }),
    ...(remark === "" ? [] : [words(remark, x + width, y + 12, { anchor: "end", style: "quiet" })]),
    words(fittedWords(state, width), x, y + 28),
    ...stateBand(id, resource, { x, y: y + 33, width }),
  ];
}

/** The mark on it is the share of the state that is over, where its end is known. */
export function stateBand(id: string, { state, kind, progress, until }: Named, place: Place): readonly Child[] {
  const { x, y, width } = place;
  const box = filledBox(id, stateLook(state, kind).fill, { x, y, width, height: bandHeight });
  const at = x + width * progress;
  const mark = [
    element("line", { x1: at, x2: at, y1: y - 2, y2: y + bandHeight + 2, class: "over-edge" }),
    element("line", { x1: at, x2: at, y1: y - 2, y2: y + bandHeight + 2, class: "over" }),
  ];
  return until === null ? box : [...box, ...mark];
}

/** Quiet lines of words below each other; `y` is the top of the first. */
export function quietLines(lines: readonly string[], { x, y, width }: Place): readonly Child[] {
  return lines.map((line, i) => words(fittedWords(line, width), x, y + 12 + i * linePitch, { style: "quiet" }));
}

/** The last one where none fits. */
export function firstFitting(choices: readonly string[], width: number): string {
  return choices.find((choice) => widthOfWords(choice) <= width) ?? choices.at(-1) ?? "";
}

/** Words in lines of a width. */
export function wrapped(content: string, width: number): readonly string[] {
  return content.split(" ").reduce<readonly string[]>((lines, word) => {
    const longer = [...lines.slice(-1), word].join(" ");
    return widthOfWords(longer) <= width ? [...lines.slice(0, -1), longer] : [...lines, word];
  }, []);
}
