// Which streams serve one distribution only, so that their times can be drawn ahead of their use.
import { BY_DISTRIBUTION } from "#core/border/numbers.ts";
import type { Sampler } from "#engine/distributions/sampler.ts";
import type { Draw, Row } from "./row.ts";

/** In the order of their first use. A fixed time needs no draw at all. */
export function drawnAhead(rows: readonly Row[]): readonly number[] {
  const drawers = new Map<number, (Sampler | undefined)[]>();
  const note = (stream: number, sampler?: Sampler): void => {
    drawers.set(stream, [...(drawers.get(stream) ?? []), sampler]);
  };
  for (const { draw, patience, scale, chanceStream } of rows) {
    if (draw) note(draw.stream, steadySampler(draw));
    if (patience) note(patience.stream);
    if (scale) note(scale.stream);
    if (chanceStream !== -1) note(chanceStream);
  }
  const isSteady = ([first, ...others]: readonly (Sampler | undefined)[]): boolean =>
    first !== undefined && !first.isFixed && others.every((other) => other === first);
  return [...drawers].filter(([, samplers]) => isSteady(samplers)).map(([stream]) => stream);
}

/** Nothing where the number drawn depends on the moment: the last one once more, a time until, one of several distributions. */
function steadySampler({ samplers, again, until }: Draw): Sampler | undefined {
  const [first, ...others] = samplers;
  return again || until !== BY_DISTRIBUTION || others.some((other) => other !== first) ? undefined : first;
}
