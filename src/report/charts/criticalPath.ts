// The critical path in the timing chart: a line below each step on the path, from row to row where the resource changes.
import type { ChainSegment } from "#cell/records/timelineRecord.ts";
import { line } from "./chart.ts";
import { element, type Child, type Markup } from "./markup.ts";
import type { TimingLayout } from "./timingLayout.ts";

/** All edges before all lines, so that no edge covers a line. */
export function criticalPath(chain: readonly ChainSegment[], layout: TimingLayout): Markup {
  const pieces = chain.flatMap((segment, i) => piece(segment, chain[i - 1], layout));
  return element(
    "g",
    {},
    ...pieces.map(({ x1, y1, x2, y2, style }) => line(x1, y1, x2, y2, `path-edge ${style}-edge`)),
    ...pieces.map(({ x1, y1, x2, y2, style }) => line(x1, y1, x2, y2, style)),
    ...ends(chain, layout),
  );
}

interface Piece {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly style: string;
}

function piece(segment: ChainSegment, before: ChainSegment | undefined, { at, rail }: TimingLayout): readonly Piece[] {
  const [x1, x2, y] = [at(segment.start), at(segment.end), rail(segment.resource)];
  const along = { x1, y1: y, x2, y2: y, style: segment.tied ? "path tied" : "path" };
  if (!before || before.resource === segment.resource) return [along];
  return [{ x1, y1: rail(before.resource), x2: x1, y2: y, style: "change" }, along];
}

/** A short tick where a step ends and the next on the path begins, so that steps can be counted. */
function ends(chain: readonly ChainSegment[], { at, rail }: TimingLayout): readonly Child[] {
  return chain
    .slice(1)
    .map(({ resource, start }) => line(at(start), rail(resource) - 3.5, at(start), rail(resource) + 3.5, "path-step"));
}
