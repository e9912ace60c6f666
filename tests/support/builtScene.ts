// Scenes that are built, not simulated: any cell in any state, for tests of what reads a scene.
import type {
  Scene,
  SceneMelt,
  SceneMold,
  SceneOperator,
  SceneRam,
  SceneResource,
  SceneServer,
  SceneStation,
} from "#report/scene/scene.ts";

export function builtResource(given: Partial<SceneResource> = {}): SceneResource {
  return {
    name: "left",
    state: "cooling",
    kind: "working",
    step: null,
    role: null,
    cause: null,
    since: 10,
    until: 20,
    progress: 0.5,
    station: null,
    shot: null,
    operator: null,
    ...given,
  };
}

export function builtMelt(given: Partial<SceneMelt> = {}): SceneMelt {
  return { share: 0.58, grams: 63, shotGrams: 109, capacityGrams: 400, ...given };
}

export function builtMold(given: Partial<SceneMold> = {}): SceneMold {
  return {
    closed: 0,
    content: "nothing",
    parison: 0,
    air: "none",
    cooling: null,
    hottest: null,
    sag: null,
    travel: null,
    ...given,
  };
}

interface GivenStation extends Partial<Omit<SceneStation, "mold">> {
  readonly mold?: Partial<SceneMold>;
}

export function builtStation({ mold, ...given }: GivenStation = {}): SceneStation {
  return { ...builtResource(), cavities: 2, shotGrams: 109, shots: 12, parts: 24, ...given, mold: builtMold(mold) };
}

export function builtRam(given: Partial<SceneRam> = {}): SceneRam {
  return { ...builtResource({ name: "ram", state: "filling" }), of: null, melt: builtMelt(), ...given };
}

export function builtOperator(given: Partial<SceneOperator> = {}): SceneOperator {
  return {
    ...builtResource({ name: "operator 1", state: "free", kind: "waiting", until: null, progress: 0 }),
    at: null,
    walksTo: null,
    ...given,
  };
}

export function builtServer(given: Partial<SceneServer> = {}): SceneServer {
  return {
    name: "trimmer",
    places: [builtResource({ name: "trimmer 1", state: "working" })],
    before: 3,
    room: 6,
    passed: 118,
    ...given,
  };
}

export function builtScene(given: Partial<Scene> = {}): Scene {
  return {
    seconds: 83.5,
    moment: 40,
    moments: 100,
    delivery: "reciprocating-screw",
    screw: {
      ...builtResource({ name: "plasticator", state: "recharging" }),
      melt: builtMelt(),
      parison: null,
      turns: true,
    },
    valve: {
      ...builtResource({ name: "selector valve", state: "neutral", kind: "waiting", until: null, progress: 0 }),
      openTo: null,
      shiftsFor: null,
    },
    rams: [],
    stations: [builtStation()],
    masks: [],
    operators: [],
    servers: [],
    goodParts: 118,
    ...given,
  };
}

/** What a mold does, one after the other; a cell of many stations shows all of them. */
const moldSteps: readonly GivenStation[] = [
  { state: "awaiting melt", kind: "waiting", cause: "the shot is not full yet", until: null, progress: 0 },
  {
    state: "parison drop",
    role: "mold.drop",
    progress: 0.6,
    mold: { content: "parison", parison: 0.6, sag: 0.02 },
  },
  { state: "closing", role: "mold.close", mold: { content: "parison", parison: 1, closed: 0.5, sag: 0.03 } },
  { state: "blowing", role: "mold.blow", mold: { content: "parison", parison: 1, closed: 1, air: "blowing" } },
  {
    state: "cooling",
    role: "mold.cool",
    progress: 0.45,
    mold: { content: "part", parison: 1, closed: 1, air: "held", cooling: 0.45, hottest: 121 },
  },
  {
    state: "venting",
    role: "mold.vent",
    mold: { content: "part", parison: 1, closed: 1, air: "venting", hottest: 92 },
  },
  { state: "opening", role: "mold.open", mold: { content: "part", parison: 1, closed: 0.4, hottest: 90 } },
  { state: "removal", role: "mold.remove", operator: "operator 1", mold: { content: "part", parison: 1 } },
];

/** Stations in steps that differ from one to the next. */
export function builtStations(count: number, first = 0): readonly SceneStation[] {
  return Array.from({ length: count }, (_, i) =>
    builtStation({ name: count === 1 ? "left" : `station ${i + 1}`, ...moldSteps[(first + i) % moldSteps.length] }),
  );
}
