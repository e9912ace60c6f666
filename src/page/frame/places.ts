// The places of the page, each with a name and a component; with more than one, tabs lead to each.
import { useSignal } from "@preact/signals";
import { h, type ComponentChild, type FunctionComponent } from "preact";
import type { OpenedScenario } from "#page/answer/openScenario.ts";
import { LearnPlace } from "#page/learn/learnPlace.ts";
import { WatchPlace } from "#page/watch/watchPlace.ts";
import type { Session } from "./session.ts";

interface PlaceProps {
  readonly session: Session;
  readonly opened: OpenedScenario;
}

interface PlaceSpec {
  readonly id: string;
  readonly name: string;
  readonly component: FunctionComponent<PlaceProps>;
}

/** In the order of the tabs. */
const places: readonly [PlaceSpec, ...PlaceSpec[]] = [
  {
    id: "watch",
    name: "Watch",
    component: ({ session, opened }) =>
      h(WatchPlace, { opened, showFrom: (seconds) => session.choose(session.chosen.value!, seconds) }),
  },
  {
    id: "learn",
    name: "Learn",
    component: ({ session: { ask, course }, opened: { scenario, record, cycle } }) =>
      course.value ? h(LearnPlace, { ask, course: course.value, title: scenario.title, record, cycle }) : null,
  },
];

export function Places(props: PlaceProps): ComponentChild {
  const shown = useSignal(places[0]);
  const tabs = places.map((place) =>
    h(
      "button",
      {
        type: "button",
        "aria-current": place === shown.value ? "page" : undefined,
        onClick: () => {
          shown.value = place;
        },
      },
      place.name,
    ),
  );
  const { id, name, component } = shown.value;
  return [
    places.length > 1 ? h("nav", { class: "places", "aria-label": "Places" }, tabs) : null,
    h("section", { id, "aria-label": name }, h(component, props)),
  ];
}
