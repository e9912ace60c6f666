// How long a parison is drawn, and what is said about it.
import type { SceneMold } from "#report/scene/scene.ts";
import { percent } from "#report/words/digits.ts";

/** Share of the mold's height that a full parison reaches: below it the halves pinch it off. */
const fullParison = 0.86;

/** The longest tail that is drawn, as a share of the parison; a longer one has its number. */
const longestTail = 1.5;

/** Sag of a few percent is not visible, so it is drawn longer; the words say so. */
const sagExaggeration = 3;

/** Of a parison in continuous extrusion, as a share of the mold's height. */
export function parisonHeight(parison: number): number {
  return fullParison * Math.min(parison, longestTail);
}

/** As a share of the mold's height; above 1 only in continuous extrusion. */
export function parisonLength({ parison, sag, travel }: SceneMold): number {
  if (travel !== null) return parisonHeight(parison);
  return Math.min(1, fullParison * Math.min(1, parison) * (1 + (sag ?? 0) * sagExaggeration));
}

/** Empty where no sag is computed. */
export function sagWords({ parison, sag }: SceneMold): readonly string[] {
  if (sag === null) return [];
  const isCut = fullParison * parison * (1 + sag * sagExaggeration) > 1;
  const drawn = isCut ? "drawn shorter" : `drawn × ${sagExaggeration}`;
  return [`sag ${percent(sag)}, ${drawn}`];
}
