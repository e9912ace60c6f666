// Finds a resource of a scene by its name.
import type { Scene, SceneResource } from "#report/scene/scene.ts";
import { resourcesIn } from "#report/scene/sceneWords.ts";

/** The screw where the scene has none of this name. */
export function resourceNamed(scene: Scene, name: string): SceneResource {
  return resourcesIn(scene).find((resource) => resource.name === name) ?? scene.screw;
}
