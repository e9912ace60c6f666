// Built scenes of every kind of delivery and of 1 to 16 stations, for tests of the picture.
import type { Scene, SceneResource, SceneStation, SceneValve } from "#report/scene/scene.ts";
import {
  builtMelt,
  builtMold,
  builtOperator,
  builtRam,
  builtResource,
  builtScene,
  builtServer,
  builtStations,
} from "./builtScene.ts";

export function openValve(station: string): SceneValve {
  const valve = builtScene().valve!;
  return { ...valve, state: `open to ${station}`, kind: "working", openTo: station, until: 90, progress: 0.3 };
}

const people = [
  builtOperator({ state: "removing", kind: "working", at: "station 1", until: 90, progress: 0.4 }),
  builtOperator({
    name: "operator 2",
    state: "walking",
    kind: "working",
    walksTo: "station 2",
    until: 90,
    progress: 0.5,
  }),
  builtOperator({ name: "operator 3" }),
];

const takeaway = [
  builtServer(),
  builtServer({
    name: "packer",
    places: [builtResource({ state: "working" }), builtResource({ state: "starved", kind: "waiting", until: null })],
    before: 0,
    room: null,
  }),
];

const shared = { operators: people, servers: takeaway, valve: openValve("station 2") };
const stillScrew = { ...builtScene().screw, melt: null };

function withHeads(count: number): Scene {
  const stations = builtStations(count, 2);
  const states: readonly Partial<SceneResource>[] = [
    { state: "filling" },
    { state: "holding a full shot", kind: "waiting", until: null },
  ];
  const rams = stations.map(({ name }, i) =>
    builtRam({
      name: `ram of ${name}`,
      of: name,
      ...states[i % 2],
      melt: builtMelt({ share: 1 - (i % 4) / 4, capacityGrams: 160 }),
    }),
  );
  return builtScene({ ...shared, delivery: "accumulator-head", screw: stillScrew, stations, rams });
}

/** The first molds are under the die, on the way and at the blow position. */
function continuous(count: number, parison: number): Scene {
  const ways: readonly Partial<SceneStation>[] = [
    { state: "closing", role: "mold.close", mold: builtMold({ content: "parison", parison, closed: 0.5, travel: 0 }) },
    {
      state: "travel out",
      role: "mold.travelOut",
      mold: builtMold({ content: "parison", parison: 1, closed: 1, travel: 0.6 }),
    },
  ];
  const stations = builtStations(count, 4).map((station, i): SceneStation => {
    const mold = { ...station.mold, travel: 1, sag: null };
    return { ...station, mold, ...ways[i] };
  });
  const screw = { ...stillScrew, state: "extruding a parison", parison };
  return builtScene({ delivery: "continuous", screw, valve: null, stations });
}

export const sceneGallery: Readonly<Record<string, Scene>> = {
  "one station": builtScene({ stations: builtStations(1, 4) }),
  "two stations": builtScene({ ...shared, stations: builtStations(2, 1) }),
  "three stations": builtScene({ ...shared, stations: builtStations(3, 6) }),
  "five stations": builtScene({ ...shared, stations: builtStations(5) }),
  "six stations": builtScene({ ...shared, stations: builtStations(6) }),
  "sixteen stations": builtScene({ ...shared, stations: builtStations(16) }),
  "one head": withHeads(1),
  "three heads": withHeads(3),
  "sixteen heads": withHeads(16),
  "common accumulator": builtScene({
    ...shared,
    delivery: "accumulator-common",
    screw: stillScrew,
    stations: builtStations(3, 1),
    rams: [builtRam({ melt: builtMelt({ capacityGrams: 160 }) })],
  }),
  "one mold under the die": continuous(1, 0.7),
  "two molds that travel": continuous(2, 1.6),
  "six molds that travel": continuous(6, 1),
};
