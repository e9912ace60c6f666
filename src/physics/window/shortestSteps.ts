// The shortest blow and vent that an estimate may give.
import { sizedRanges } from "./plausibleRanges.ts";

/**
 * Seconds: common practice, no published source. The computed time of a small part is far shorter than valves, sensors and the
 * mold need.
 */
export const shortestSteps = { blow: 0.3, cool: 0, vent: sizedRanges.vent.bySize.bottle[0] } as const;
