// What every kind of melt delivery adds to the cycle table: its own resources, places and processes, and how a station gets its parison.
import type { PlaceSpec, StateSpec } from "#engine/compiler/stepTable.ts";
import type { CellProcess, CellResource, CellStep } from "#cell/words/cellTable.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";

/** Units: seconds and milligrams. */
export interface MeltDelivery {
  readonly resources: readonly CellResource[];
  /** In the order in which they are served; the crew's places come before them. */
  readonly places: readonly PlaceSpec[];
  /** In the order of ties, before the stations. */
  readonly processes: readonly CellProcess[];
  /** States of a station from ready to the end of its parison; the first is the one in which a run begins. */
  readonly stationStates: (station: StationSpec) => readonly StateSpec[];
  /** Steps of a station from ready up to and including the one that ends the parison. */
  readonly parison: (station: StationSpec, number: number) => readonly CellStep[];
  /** Steps of a station between close and blow; none if not given. */
  readonly afterClose?: (station: StationSpec) => readonly CellStep[];
  /** What a station's close gives back. */
  readonly closeGives: CellStep["gives"];
}

export type DeliverMelt = (scenario: Scenario) => MeltDelivery;
