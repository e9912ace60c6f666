// Files to save: the changed scenario with its comments, and the CSV files of the call.
import { useSignal } from "@preact/signals";
import { h, type ComponentChild } from "preact";
import type { Pool } from "#page/answer/pool.ts";
import type { Trying } from "./trying.ts";

interface FilesPanelProps {
  readonly trying: Trying;
  readonly pool: Pool;
}

interface SavedFile {
  readonly name: string;
  readonly text: string;
}

export function FilesPanel({ trying, pool }: FilesPanelProps): ComponentChild {
  const { shown, given, set } = trying;
  const files = useSignal<{ readonly of: readonly string[]; readonly list: readonly SavedFile[] } | undefined>(
    undefined,
  );
  const { value: done } = shown;
  const made = done && "made" in done ? done.made : undefined;
  const saveScenario = async (): Promise<void> => {
    const text = await pool.begin().ask("textWith", { given, set: set.value });
    save({ name: `${given.name}-changed.yaml`, text }, "text/yaml");
  };
  const list = async (): Promise<void> => {
    if (made === undefined) return;
    const of = set.value;
    files.value = { of, list: await pool.begin().ask("openTables", made) };
  };
  const shownFiles = files.value?.of === set.value ? files.value.list : [];
  const button = (label: string, act: () => void, isIdle = false): ComponentChild =>
    h("button", { type: "button", onClick: act, "aria-disabled": isIdle }, label);
  return h(
    "section",
    { "aria-label": "Files" },
    h("h2", {}, "Files"),
    h(
      "div",
      { class: "controls" },
      button("Save as a scenario file", () => void saveScenario()),
      button("Make the CSV files", () => void list(), made === undefined),
    ),
    shownFiles.length === 0
      ? h("p", { class: "quiet" }, "The CSV files are those of the call; changes and losses only the call finds.")
      : h(
          "ul",
          { class: "controls files" },
          shownFiles.map((file) =>
            h(
              "li",
              { key: file.name },
              button(`Save ${file.name}`, () => save(file, "text/csv")),
            ),
          ),
        ),
  );
}

function save({ name, text }: SavedFile, type: string): void {
  const place = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = place;
  link.download = name;
  link.click();
  // The browser reads it after this call.
  setTimeout(() => URL.revokeObjectURL(place), 10_000);
}
