// The picture of the cell; it takes the keys of the scene, and a click chooses a resource.
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { h, type ComponentChild, type TargetedPointerEvent } from "preact";
import { scenePicture } from "#report/picture/scenePicture.ts";
import { useUnits } from "#page/units/unitsOfPage.ts";
import { actOnKey } from "./keys.ts";
import type { Watched } from "./watched.ts";

/** Narrower pages get the picture for a phone. */
const phones = "(max-width: 40rem)";

export function ScenePanel({ watched }: { readonly watched: Watched }): ComponentChild {
  const { scene, chosen } = watched;
  const isPhone = useMedia(phones);
  const width = isPhone ? "phone" : "wide";
  const picture = scenePicture(scene.value, { id: "scene", chosen: chosen.value, width, units: useUnits() });
  return h("div", {
    class: "stage",
    tabIndex: 0,
    role: "application",
    "aria-label": "The cell",
    onKeyDown: (event: KeyboardEvent) => actOnKey(watched, event),
    // The picture is drawn anew many times a second, so that a click may begin and end on different elements.
    onPointerDown: ({ target }: TargetedPointerEvent<HTMLDivElement>) => {
      const name = (target as Element).closest("[data-resource]")?.getAttribute("data-resource");
      if (name) chosen.value = name;
    },
    dangerouslySetInnerHTML: { __html: picture.code },
  });
}

/** True while the page matches a media query. */
function useMedia(query: string): boolean {
  const matches = useSignal(matchMedia(query).matches);
  useEffect(() => {
    const list = matchMedia(query);
    const follow = (): void => {
      matches.value = list.matches;
    };
    list.addEventListener("change", follow);
    return () => list.removeEventListener("change", follow);
  }, [query]);
  return matches.value;
}
