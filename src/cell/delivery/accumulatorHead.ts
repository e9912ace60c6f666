// Melt from accumulator heads: a chamber of one shot over every station; one screw fills them in turn, and a drop needs only its own.
import type { PlaceSpec, ProcessSpec, ResourceSpec, StepSpec } from "#engine/compiler/stepTable.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import { dropsOf, headOf, PLASTICATOR, ramOf, rechargesCounter, shotsOf, VALVE } from "#cell/words/cycleNames.ts";
import type { MeltDelivery } from "#cell/table/meltDelivery.ts";
import { valveResource } from "#cell/table/selectorValve.ts";
import { shotLaw } from "#cell/table/shotLaw.ts";
import { fixed, rank, servingRule, waiting, working } from "#cell/words/tableWords.ts";

/**
 * A head calls for melt when its drop begins: the valve shifts to it meanwhile, and its fill begins when the drop is over. Every
 * fill is preceded by a shift. Calls are served by the rule of dispatch; the valve that has shifted to a head stays for its fill.
 */
export function accumulatorHead(scenario: Scenario): MeltDelivery {
  const { stations } = scenario;
  return {
    resources: [plasticator(), valveResource(scenario), ...stations.map((station) => ram(scenario, station))],
    places: [
      ...stations.flatMap((station) => headPlaces(scenario, station)),
      // Last, so that whoever calls at this instant is heard before one of them is served.
      { name: "screw", tokens: 1, rule: servingRule[scenario.valve.dispatch], rank: rank.plasticator },
    ],
    processes: stations.map((station, k) => head(scenario, station, k)),
    stationStates: () => [waiting("awaiting melt"), working("parison drop")],
    parison: (station) => parison(station),
    closeGives: [],
  };
}

function plasticator(): ResourceSpec {
  const states = [waiting("holding a full shot"), waiting("waiting for an empty chamber")];
  return { name: PLASTICATOR, states: [...states, working("recharging"), working("valve shifting")] };
}

function ram({ run }: Scenario, station: StationSpec): ResourceSpec {
  const [empty, full] = [waiting("waiting for melt"), waiting("holding a full shot")];
  const others = [working("filling"), working("delivering")];
  return {
    name: ramOf(station.name),
    states: run.start === "running" ? [full, empty, ...others] : [empty, full, ...others],
  };
}

const callOf = (station: StationSpec): string => `call of ${station.name}`;
const emptyOf = (station: StationSpec): string => `empty chamber of ${station.name}`;
const fullOf = (station: StationSpec): string => `full chamber of ${station.name}`;

function headPlaces({ run }: Scenario, station: StationSpec): readonly PlaceSpec[] {
  const full = run.start === "running" ? 1 : 0;
  return [
    { name: callOf(station), tokens: 1 - full, rank: rank.station },
    { name: emptyOf(station), tokens: 1 - full, rank: rank.station },
    { name: fullOf(station), tokens: full, rank: rank.plasticator },
  ];
}

/** What the screw does for one head; the screw goes from one to the next as a token. */
function head(scenario: Scenario, station: StationSpec, number: number): ProcessSpec {
  const ramName = ramOf(station.name);
  return {
    name: headOf(station.name),
    resource: ramName,
    cargo: number,
    priority: station.priority,
    steps: [
      { name: "await a call", needs: [{ place: callOf(station) }] },
      {
        name: "shift to head",
        needs: [{ place: "screw" }],
        shows: [
          { resource: VALVE, state: "shifting" },
          { resource: PLASTICATOR, state: "valve shifting" },
        ],
        time: { ...fixed(scenario.valve.shift), resource: VALVE },
        stoppedBy: [VALVE],
      },
      {
        name: "stand at the head",
        shows: [
          // Until melt passes, the port is as good as shut.
          { resource: VALVE, state: "neutral" },
          { resource: PLASTICATOR, state: "waiting for an empty chamber" },
        ],
      },
      {
        name: "recharge",
        needs: [{ place: emptyOf(station) }],
        shows: [
          { resource: PLASTICATOR, state: "recharging" },
          { resource: VALVE, state: `open to ${station.name}` },
          { resource: ramName, state: "filling" },
        ],
        // The laws of all heads, so that the screw's n-th recharge has the n-th number whichever head it fills.
        time: {
          laws: scenario.stations.map((each) => shotLaw(each.recharge, each)),
          resource: PLASTICATOR,
        },
        stoppedBy: [PLASTICATOR],
        gives: [{ place: fullOf(station) }, { place: "screw" }],
        counts: { [rechargesCounter]: 1 },
      },
      {
        name: "hold",
        shows: [
          { resource: ramName, state: "holding a full shot" },
          { resource: PLASTICATOR, state: "holding a full shot" },
          { resource: VALVE, state: "neutral" },
        ],
      },
    ],
  };
}

function parison(station: StationSpec): readonly StepSpec[] {
  const ramName = ramOf(station.name);
  return [
    {
      name: "call for melt",
      needs: [{ place: fullOf(station), meanwhile: "awaiting melt" }],
      gives: [{ place: callOf(station) }],
      counts: { [dropsOf(station.name)]: 1 },
    },
    {
      name: "drop",
      shows: [
        { resource: station.name, state: "parison drop" },
        { resource: ramName, state: "delivering" },
      ],
      time: { laws: [shotLaw(station.drop, station)] },
      gives: [{ place: emptyOf(station) }],
      counts: { [shotsOf(station.name)]: 1 },
    },
    { name: "ram is empty", shows: [{ resource: ramName, state: "waiting for melt" }] },
  ];
}
