// Melt from accumulator heads: a chamber of one shot over every station; one screw fills them in turn, and a drop needs only its own.
import type { PlaceSpec } from "#engine/compiler/stepTable.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import type { CellProcess, CellResource, CellStep } from "#cell/words/cellTable.ts";
import { dropsOf, headOf, PLASTICATOR, ramOf, rechargesCounter, shotsOf, VALVE } from "#cell/words/cycleNames.ts";
import { openTo, stateNames } from "#cell/words/stateNames.ts";
import { named } from "#cell/words/stepNames.ts";
import type { MeltDelivery } from "#cell/table/meltDelivery.ts";
import { valveResource } from "#cell/table/selectorValve.ts";
import { shotTime } from "#cell/table/shotTime.ts";
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
      // Last, so that all calls of this instant are known before one of them is served.
      { name: SCREW, tokens: 1, rule: servingRule[scenario.valve.dispatch], rank: rank.plasticator },
    ],
    processes: stations.map((station, k) => head(scenario, station, k)),
    stationStates: () => [waiting(stateNames.awaitingMelt), working(stateNames.parisonDrop)],
    parison: (station) => parison(station),
    closeGives: [],
  };
}

function plasticator(): CellResource {
  const states = [waiting(stateNames.holdingShot), waiting(stateNames.awaitingEmptyChamber)];
  const work = [working(stateNames.recharging), working(stateNames.valveShifting)];
  return { name: PLASTICATOR, kind: "screw", states: [...states, ...work] };
}

function ram({ run }: Scenario, station: StationSpec): CellResource {
  const [empty, full] = [waiting(stateNames.awaitingShot), waiting(stateNames.holdingShot)];
  const others = [working(stateNames.filling), working(stateNames.delivering)];
  return {
    name: ramOf(station.name),
    kind: "ram",
    station: station.name,
    states: run.start === "running" ? [full, empty, ...others] : [empty, full, ...others],
  };
}

/** The screw goes from one head to the next. */
const SCREW = "screw";
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
function head(scenario: Scenario, station: StationSpec, number: number): CellProcess {
  const ramName = ramOf(station.name);
  return {
    name: headOf(station.name),
    kind: "head",
    station: station.name,
    resource: ramName,
    cargo: number,
    priority: station.priority,
    steps: [
      { ...named("head.awaitCall"), needs: [{ place: callOf(station) }] },
      {
        ...named("valve.toHead"),
        needs: [{ place: SCREW }],
        shows: [
          { resource: VALVE, state: stateNames.shifting },
          { resource: PLASTICATOR, state: stateNames.valveShifting },
        ],
        time: { ...fixed(scenario.valve.shift), resource: VALVE },
        stoppedBy: [VALVE],
      },
      {
        ...named("head.await"),
        shows: [
          // Until melt passes, the port is as good as shut.
          { resource: VALVE, state: stateNames.neutral },
          { resource: PLASTICATOR, state: stateNames.awaitingEmptyChamber },
        ],
      },
      {
        ...named("screw.recharge"),
        needs: [{ place: emptyOf(station) }],
        shows: [
          { resource: PLASTICATOR, state: stateNames.recharging },
          { resource: VALVE, state: openTo(station.name) },
          { resource: ramName, state: stateNames.filling },
        ],
        // The distributions of all heads, so that the screw's n-th recharge has the n-th number whichever head it fills.
        time: {
          distributions: scenario.stations.map((each) => shotTime(each.recharge, each)),
          resource: PLASTICATOR,
        },
        stoppedBy: [PLASTICATOR],
        gives: [{ place: fullOf(station) }, { place: SCREW }],
        counts: { [rechargesCounter]: 1 },
      },
      {
        ...named("screw.hold"),
        shows: [
          { resource: ramName, state: stateNames.holdingShot },
          { resource: PLASTICATOR, state: stateNames.holdingShot },
          { resource: VALVE, state: stateNames.neutral },
        ],
      },
    ],
  };
}

function parison(station: StationSpec): readonly CellStep[] {
  const ramName = ramOf(station.name);
  return [
    {
      ...named("mold.callMelt"),
      needs: [{ place: fullOf(station), meanwhile: stateNames.awaitingMelt }],
      gives: [{ place: callOf(station) }],
      counts: { [dropsOf(station.name)]: 1 },
    },
    {
      ...named("mold.drop"),
      shows: [
        { resource: station.name, state: stateNames.parisonDrop },
        { resource: ramName, state: stateNames.delivering },
      ],
      time: { distributions: [shotTime(station.drop, station)] },
      gives: [{ place: emptyOf(station) }],
      counts: { [shotsOf(station.name)]: 1 },
    },
    { ...named("mold.emptyRam"), shows: [{ resource: ramName, state: stateNames.awaitingShot }] },
  ];
}
