// The words of the chosen resource: what it does, what it needs, what its wait turned out to be, and a caution.
import { h, type ComponentChild, type TargetedEvent } from "preact";
import type { SceneResource, SceneWords } from "#report/scene/scene.ts";
import { resourcesIn, sceneWords } from "#report/scene/sceneWords.ts";
import { screenName } from "#report/words/tradeWords.ts";
import { useUnits } from "#page/units/unitsOfPage.ts";
import { resourceNamed } from "./resourceNamed.ts";
import type { Watched } from "./watched.ts";

export function WordsPanel({ watched }: { readonly watched: Watched }): ComponentChild {
  const { scene, chosen, record } = watched;
  const resource = resourceNamed(scene.value, chosen.value);
  const words = sceneWords(record, scene.value, resource.name, useUnits());
  const options = resourcesIn(scene.value).map(({ name }) =>
    h("option", { value: name, selected: name === resource.name }, screenName(name)),
  );
  const choose = ({ currentTarget }: TargetedEvent<HTMLSelectElement>): void => {
    chosen.value = currentTarget.value;
  };
  return h(
    "section",
    { class: "words", "aria-label": "Words" },
    h("label", {}, "Resource ", h("select", { onChange: choose }, options)),
    h("p", { class: "does" }, words.does),
    words.needs === null ? null : h("p", {}, words.needs),
    h(TurnedOut, { watched, resource, words }),
    words.caution === null ? null : h("p", { class: "caution" }, words.caution),
  );
}

interface TurnedOutProps {
  readonly watched: Watched;
  readonly resource: SceneResource;
  readonly words: SceneWords;
}

/** The end of a wait is hidden where it lies behind the curtain. */
function TurnedOut({ watched, resource: { until }, words: { turnedOut, freedBy } }: TurnedOutProps): ComponentChild {
  const curtain = watched.hiddenAfter.value ?? Infinity;
  if (turnedOut === null || (until ?? watched.record.until) > curtain) return null;
  if (freedBy === null) return h("p", {}, turnedOut);
  const follow = (): void => {
    watched.chosen.value = freedBy.resource;
    watched.goTo(freedBy.seconds);
  };
  return h(
    "p",
    {},
    `${turnedOut} `,
    h("button", { type: "button", onClick: follow }, `Go to ${screenName(freedBy.resource)}`),
  );
}
