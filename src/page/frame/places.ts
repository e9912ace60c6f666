// The places of the page, each with a name and a component; with more than one, tabs lead to each.
import { h, type ComponentChild, type FunctionComponent } from "preact";
import type { OpenedScenario } from "#page/answer/openScenario.ts";
import { LearnPlace } from "#page/learn/learnPlace.ts";
import { orderKeys } from "#page/order/kept.ts";
import { OrderPlace } from "#page/order/orderPlace.ts";
import { TryPlace } from "#page/try/tryPlace.ts";
import { WatchPlace } from "#page/watch/watchPlace.ts";
import type { Address, AddressTerms } from "./address.ts";
import { IssueList } from "./issueList.ts";
import type { Session } from "./session.ts";

interface PlaceProps {
  readonly session: Session;
  readonly opened: OpenedScenario;
}

interface PlaceSpec {
  readonly id: string;
  readonly name: string;
  /** What it keeps in the address. */
  readonly keys?: readonly string[];
  /** It begins with an answer of its own, in place of the ideal cycle. */
  readonly answers?: true;
  /** It has cells of its own: the chosen scenario is not what it shows. */
  readonly hasOwnCells?: true;
  readonly component: FunctionComponent<PlaceProps>;
}

/** Without a setting. */
const asItIs: readonly string[] = [];

/** In the order of the tabs. */
const places: readonly [PlaceSpec, ...PlaceSpec[]] = [
  {
    id: "watch",
    name: "Watch",
    component: ({ session, opened }) =>
      h(WatchPlace, { opened, showFrom: (seconds) => session.choose(session.chosen.value!, seconds) }),
  },
  {
    id: "try",
    name: "Try",
    answers: true,
    keys: ["set"],
    component: ({ session: { chosen, pool, address, goTo } }) =>
      h(TryPlace, {
        given: chosen.value!,
        pool,
        set: address.value.values["set"] ?? asItIs,
        write: (set) => goTo({ values: { ...address.peek().values, set } }),
      }),
  },
  {
    id: "learn",
    name: "Learn",
    hasOwnCells: true,
    component: ({ session: { ask, course }, opened: { scenario, record, cycle } }) =>
      course.value ? h(LearnPlace, { ask, course: course.value, title: scenario.title, record, cycle }) : null,
  },
  {
    id: "order",
    name: "Order",
    answers: true,
    keys: orderKeys,
    component: ({ session, opened: { scenario } }) =>
      h(OrderPlace, {
        pool: session.pool,
        given: session.chosen.value!,
        scenario,
        values: session.address.value.values,
        keepValues: (values) => session.goTo({ values }),
        known: session.opening.value?.issues ?? [],
        showIssues: (issues) => h(IssueList, { issues }),
      }),
  },
];

export const addressTerms: AddressTerms = {
  places: places.map(({ id }) => id),
  keys: places.flatMap(({ keys = [] }) => keys),
};

const placeOf = ({ place }: Address): PlaceSpec => places.find(({ id }) => id === place) ?? places[0];

export const answersItself = (address: Address): boolean => placeOf(address).answers === true;

/** Undefined where the place is about the chosen scenario. */
export function titleOfItsOwn(address: Address): string | undefined {
  const { name, hasOwnCells } = placeOf(address);
  return hasOwnCells && name;
}

export function Places(props: PlaceProps): ComponentChild {
  const { address, goTo } = props.session;
  const shown = placeOf(address.value);
  const tabs = places.map((place) =>
    h(
      "button",
      {
        type: "button",
        "aria-current": place === shown ? "page" : undefined,
        onClick: () => goTo({ place: place.id }),
      },
      place.name,
    ),
  );
  const { id, name, component } = shown;
  return [
    places.length > 1 ? h("nav", { class: "places", "aria-label": "Places" }, tabs) : null,
    h("section", { id, "aria-label": name }, h(component, props)),
  ];
}
