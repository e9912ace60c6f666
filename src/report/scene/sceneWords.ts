// What a resource does at a moment, what it needs, what ended its wait, and the caution of its state.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { invariant } from "#foundation/invariant.ts";
import { ownerName } from "#report/words/tradeWords.ts";
import { seconds as inSeconds } from "#report/words/digits.ts";
import { stateMeanings, type StateMeaning } from "#cell/words/stateMeanings.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { needWords } from "./needWords.ts";
import { resourceOf, rowAt } from "./rowsOf.ts";
import type { Scene, SceneResource, SceneWords } from "./scene.ts";
import type { SceneRecord } from "./sceneRecord.ts";
import { endOfWait, freeingLink, isWait } from "./wayBack.ts";

/** A step of the user's own has a state without a meaning here. */
const meanings: ReadonlyMap<string, StateMeaning> = new Map(Object.entries(stateMeanings));

export function sceneWords(record: SceneRecord, scene: Scene, name: string, units: UnitSystem = "si"): SceneWords {
  const resource = resourcesIn(scene).find((each) => each.name === name);
  invariant(resource, "a resource that is asked for is one of the scene", { name });
  const meaning = meanings.get(resource.state);
  return {
    does: meaning?.meaning ?? ownState(scene, resource),
    needs: needWords({ record, scene, resource, units }),
    ...turnedOut(record, scene, name),
    caution: meaning?.caution ?? null,
  };
}

/** In the order of the scene. */
export function resourcesIn(scene: Scene): readonly SceneResource[] {
  const { screw, valve, rams, stations, masks, operators, servers } = scene;
  const places = servers.flatMap((server) => server.places);
  return [screw, ...(valve ? [valve] : []), ...rams, ...stations, ...masks, ...operators, ...places];
}

function ownState({ valve }: Scene, { name, state }: SceneResource): string {
  return valve?.name === name && valve.openTo !== null
    ? `The valve is open to ${valve.openTo}.`
    : `A step of its own: ${state}.`;
}

function turnedOut(record: SceneRecord, scene: Scene, name: string): Pick<SceneWords, "turnedOut" | "freedBy"> {
  const resource = resourceOf(record, name);
  const row = rowAt(record, resource, scene.seconds);
  if (!isWait(row)) return { turnedOut: null, freedBy: null };
  const end = endOfWait(record, resource, row);
  if (!end) return { turnedOut: "It still waits where the record ends.", freedBy: null };
  const at = inSeconds(end.seconds);
  if (end.kind === "off") return { turnedOut: `It goes ${end.state} at ${at}.`, freedBy: null };
  if (row.kind === "stopped") return { turnedOut: `The stop ended at ${at}.`, freedBy: null };
  if (end.state === stateNames.repairing) {
    return { turnedOut: `Called at ${at} to repair ${ownerName(end.at ?? name)}.`, freedBy: null };
  }
  const link = freeingLink(record, end);
  if (!link) return { turnedOut: `It waited until ${at}.`, freedBy: null };
  const freedBy = { resource: link.resource, seconds: link.from };
  return { turnedOut: `Freed at ${at} by ${link.words}.`, freedBy };
}
