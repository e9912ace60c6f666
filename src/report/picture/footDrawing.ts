// The last lines of the picture: the good parts, how to read a band, and what the picture is not.
import { words } from "#report/charts/chart.ts";
import type { Child } from "#report/charts/markup.ts";
import type { Scene } from "#report/scene/scene.ts";
import { counted } from "./pictureWords.ts";
import { linePitch } from "./statePlate.ts";

export const wideNotes: readonly string[] = [
  "The mark on a band shows how much of the state is over.",
  "Melt in barrel and chambers is to scale where masses are given.",
  "No safety information: gates, interlocks and lockout stay in use.",
];

export const phoneNotes: readonly string[] = [
  "The mark on a band: how much of the state is over.",
  "No safety information: gates, interlocks and",
  "lockout stay in use.",
];

/** With room for the longer notes. */
export const footHeight = 4 * linePitch + 8;

export function footDrawing(
  { goodParts }: Scene,
  top: number,
  left: number,
  notes: readonly string[],
): readonly Child[] {
  return [
    words(counted(goodParts, "good part", "good parts"), left, top + 16, { style: "name" }),
    ...notes.map((note, i) => words(note, left, top + 16 + (i + 1) * linePitch, { style: "quiet" })),
  ];
}
