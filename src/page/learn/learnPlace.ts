// The place Learn: the list of lessons and drills, and the one that is open.
import { useSignal, type Signal } from "@preact/signals";
import { h, type ComponentChild } from "preact";
import type { Ask } from "#page/answer/asker.ts";
import type { ShownDrill } from "#page/answer/openDrills.ts";
import type { LessonOpening } from "#page/answer/openLesson.ts";
import type { Course } from "#page/file/given.ts";
import { drillKinds } from "#report/drills/drillKinds.ts";
import type { SceneRecord } from "#report/scene/sceneRecord.ts";
import { DrillView } from "./drillView.ts";
import { Heading } from "./heading.ts";
import { LessonView } from "./lessonView.ts";
import { SheetView } from "./sheetView.ts";

interface LearnPlaceProps {
  readonly ask: Ask;
  readonly course: Course;
  /** Of the chosen scenario. */
  readonly title: string;
  readonly record: SceneRecord;
  readonly cycle: number;
}

type Open =
  | { readonly kind: "list" }
  | { readonly kind: "sheet" }
  | { readonly kind: "lesson"; readonly number: number; readonly opening: LessonOpening | undefined }
  | { readonly kind: "drills"; readonly title: string; readonly drills: readonly ShownDrill[] | undefined }
  | { readonly kind: "fault"; readonly fault: string };

export function LearnPlace({ ask, course, title, record, cycle }: LearnPlaceProps): ComponentChild {
  const open = useSignal<Open>({ kind: "list" });
  const actions = actionsOf(open, ask, course);
  const shown = open.value;
  if (shown.kind === "list") return h(LearnList, { course, actions });
  return [
    h("p", { class: "back" }, h("button", { type: "button", onClick: actions.list }, "All lessons and drills")),
    shown.kind === "sheet" ? h(SheetView, { title, record, cycle }) : h(OpenView, { shown, course, actions }),
  ];
}

interface Actions {
  readonly list: () => void;
  readonly sheet: () => void;
  readonly lesson: (number: number) => void;
  readonly drills: (name: string, title: string) => void;
}

function actionsOf(open: Signal<Open>, ask: Ask, { lessons, cells }: Course): Actions {
  const show = (next: Open): void => {
    open.value = next;
  };
  const fail = (error: unknown): void => show({ kind: "fault", fault: String(error) });
  return {
    list: () => show({ kind: "list" }),
    sheet: () => show({ kind: "sheet" }),
    lesson(number) {
      const waiting: Open = { kind: "lesson", number, opening: undefined };
      show(waiting);
      // A reply that comes after another choice is dropped.
      ask("openLesson", lessons[number]!).then((opening) => {
        if (open.value === waiting) show({ ...waiting, opening });
      }, fail);
    },
    drills(name, title) {
      const waiting: Open = { kind: "drills", title, drills: undefined };
      show(waiting);
      ask("openDrills", { kind: name, cells }).then((drills) => {
        if (open.value === waiting) show({ ...waiting, drills });
      }, fail);
    },
  };
}

interface LearnListProps {
  readonly course: Course;
  readonly actions: Actions;
}

function LearnList({ course, actions }: LearnListProps): ComponentChild {
  const entry = (words: string, act: () => void): ComponentChild =>
    h("li", { key: words }, h("button", { type: "button", onClick: act }, words));
  return [
    h(Heading, { words: "Lessons" }),
    h("p", {}, "Each lesson asks what comes next, shows it, and explains it. The answers come from a run of the cell."),
    h(
      "ul",
      { class: "lessons" },
      course.lessons.map(({ title }, i) => entry(title, () => actions.lesson(i))),
    ),
    h("h2", {}, "Drills"),
    h("p", {}, "Short questions on charts. The score is on screen only; nothing is stored."),
    h(
      "ul",
      { class: "lessons" },
      drillKinds.map(({ name, title }) => entry(title, () => actions.drills(name, title))),
    ),
    h("h2", {}, "On paper"),
    h("ul", { class: "lessons" }, entry("Sheet to print: a chart without words, with its key", actions.sheet)),
  ];
}

interface OpenViewProps extends LearnListProps {
  readonly shown: Exclude<Open, { readonly kind: "list" | "sheet" }>;
}

function OpenView({ shown, course, actions }: OpenViewProps): ComponentChild {
  const wait = h("p", { class: "quiet", role: "status" }, "The cells are run.");
  if (shown.kind === "fault")
    return h("p", { class: "finding", role: "alert" }, `This is a fault of blowcell: ${shown.fault}`);
  if (shown.kind === "drills") return shown.drills ? h(DrillView, { title: shown.title, drills: shown.drills }) : wait;
  if (shown.opening === undefined) return wait;
  const { opened } = shown.opening;
  // The command has already reported the issues of a lesson; a page is written without them only.
  if (opened === undefined)
    return h("p", { role: "alert" }, shown.opening.issues.map(({ message }) => message).join(" "));
  const number = shown.number + 1;
  const following = course.lessons[number];
  const next = following && { title: following.title, open: () => actions.lesson(number) };
  return h(LessonView, { key: shown.number, lesson: opened, next });
}
