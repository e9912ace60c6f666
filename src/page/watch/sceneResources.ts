// The resources of a scene in one list: the melt side, the stations, then all that takes the parts away.
import type { Scene, SceneResource } from "#report/scene/scene.ts";

export function sceneResources(scene: Scene): readonly SceneResource[] {
  const { screw, valve, rams, stations, masks, operators, servers } = scene;
  const places = servers.flatMap((server) => server.places);
  return [screw, ...(valve ? [valve] : []), ...rams, ...stations, ...masks, ...operators, ...places];
}

/** The resource of this name; the screw where the scene has none of it. */
export function resourceNamed(scene: Scene, name: string): SceneResource {
  return sceneResources(scene).find((resource) => resource.name === name) ?? scene.screw;
}
