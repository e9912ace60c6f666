// From the positions of levers to settings in their order, and back.
import type { Lever } from "#page/trial/lever.ts";

/** The position whose settings are all among these; where several are, the one with the most. */
export function positionIn({ positions, present }: Lever, set: readonly string[]): number {
  let [found, most] = [present, 0];
  positions.forEach(({ settings }, i) => {
    if (settings.length > most && settings.every((each) => set.includes(each))) [found, most] = [i, settings.length];
  });
  return found;
}

/** Settings that no lever stands for, such as those of a link that was typed. */
export function otherSettings(levers: readonly Lever[], set: readonly string[]): readonly string[] {
  const own = new Set(levers.flatMap((lever) => lever.positions[positionIn(lever, set)]!.settings));
  return set.filter((each) => !own.has(each));
}

/** Settings of no lever come first; those that add or remove entries come last, so that all others find their entries. */
export function settingsWith(
  levers: readonly Lever[],
  set: readonly string[],
  moved: Lever,
  position: number,
): readonly string[] {
  const chosen = levers.map((lever) => {
    const at = lever === moved ? position : positionIn(lever, set);
    return { lever, settings: lever.positions[at]!.settings };
  });
  return [
    ...otherSettings(levers, set),
    ...chosen.filter(({ lever }) => !lever.isLast).flatMap(({ settings }) => settings),
    ...chosen.filter(({ lever }) => lever.isLast).flatMap(({ settings }) => settings),
  ];
}
