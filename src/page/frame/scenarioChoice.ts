// The choice of the scenario: those in the page, and files of the user, named or dropped on the page.
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { h, type ComponentChild, type TargetedEvent } from "preact";
import type { Issue } from "#foundation/issue.ts";
import { readFiles } from "./readFiles.ts";
import { IssueList } from "./issueList.ts";
import type { Session } from "./session.ts";

export function ScenarioChoice({ session }: { readonly session: Session }): ComponentChild {
  const { scenarios, chosen } = session;
  const refused = useSignal<readonly Issue[]>([]);
  const take = async (files: Iterable<File>): Promise<void> => {
    const { scenarios: read, issues } = await readFiles([...files]);
    refused.value = issues;
    session.add(read);
  };
  useEffect(() => acceptDrops((files) => void take(files)), [session]);
  return [
    h(
      "label",
      {},
      "Scenario ",
      h(
        "select",
        {
          onChange: ({ currentTarget }: TargetedEvent<HTMLSelectElement>) =>
            session.choose(scenarios.value[currentTarget.selectedIndex]!),
        },
        scenarios.value.map((each) => h("option", { selected: each === chosen.value }, each.name)),
      ),
    ),
    h(
      "label",
      {},
      "Open a scenario file, with its tables, or drop them on the page ",
      h("input", {
        type: "file",
        multiple: true,
        onChange: ({ currentTarget }: TargetedEvent<HTMLInputElement>) => void take(currentTarget.files ?? []),
      }),
    ),
    h(IssueList, { issues: refused.value }),
  ];
}

/** Until the returned function is called, files that are dropped anywhere on the page are taken and not opened by the browser. */
function acceptDrops(take: (files: Iterable<File>) => void): () => void {
  const allow = (event: DragEvent): void => event.preventDefault();
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    take(event.dataTransfer?.files ?? []);
  };
  document.addEventListener("dragover", allow);
  document.addEventListener("drop", drop);
  return () => {
    document.removeEventListener("dragover", allow);
    document.removeEventListener("drop", drop);
  };
}
