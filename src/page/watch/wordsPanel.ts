// The words of the chosen resource: what it does, what it needs, what its wait turned out to be, and a caution.
import { h, type ComponentChild, type TargetedEvent } from "preact";
import { resourcesIn, sceneWords } from "#report/scene/sceneWords.ts";
import { screenName } from "#report/words/tradeWords.ts";
import { resourceNamed } from "./resourceNamed.ts";
import type { Watched } from "./watched.ts";

export function WordsPanel({ watched }: { readonly watched: Watched }): ComponentChild {
  const { scene, chosen, record, hiddenAfter } = watched;
  const resource = resourceNamed(scene.value, chosen.value);
  const words = sceneWords(record, scene.value, resource.name);
  // How a wait ends is hidden by the curtain too.
  const isKnown = words.freedBy !== null && words.freedBy.seconds <= (hiddenAfter.value ?? record.until);
  return h(
    "section",
    { class: "words", "aria-labelledby": "words-of" },
    h(
      "label",
      { id: "words-of" },
      "Resource ",
      h(
        "select",
        {
          onChange: ({ currentTarget }: TargetedEvent<HTMLSelectElement>) => {
            chosen.value = currentTarget.value;
          },
        },
        resourcesIn(scene.value).map(({ name }) =>
          h("option", { value: name, selected: name === resource.name }, screenName(name)),
        ),
      ),
    ),
    h("p", { class: "does" }, words.does),
    words.needs === null ? null : h("p", {}, words.needs),
    words.turnedOut === null || !isKnown
      ? null
      : h(
          "p",
          {},
          `${words.turnedOut} `,
          h(
            "button",
            {
              type: "button",
              onClick: () => {
                chosen.value = words.freedBy!.resource;
                watched.goTo(words.freedBy!.seconds);
              },
            },
            `Go to ${screenName(words.freedBy!.resource)}`,
          ),
        ),
    words.caution === null ? null : h("p", { class: "caution" }, words.caution),
  );
}
