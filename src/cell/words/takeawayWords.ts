// The reasons for which servers after the mold refuse parts.
import type { ServerSpec } from "#scenario/scenario.ts";

/** Why a part is refused that waited for too long. */
export const tooOldFor = (server: string): string => `too old for ${server}`;

/** What a server may refuse parts for. */
export function reasonsOf({ name, rejects, reason = name, maxAge }: ServerSpec): readonly string[] {
  return [...(rejects > 0 ? [reason] : []), ...(maxAge === undefined ? [] : [tooOldFor(name)])];
}
