// The name of a lever: the word of the trade for what its path sets, and where.
import { stateNames } from "#cell/words/stateNames.ts";

const stepNouns: Readonly<Record<string, string>> = {
  close: stateNames.closing,
  blow: stateNames.blowing,
  cool: stateNames.cooling,
  vent: stateNames.venting,
  open: stateNames.opening,
  remove: stateNames.removal,
  clear: stateNames.clearing,
  cut: stateNames.cut,
  travelIn: stateNames.travelIn,
  travelOut: stateNames.travelOut,
};

const nouns: Readonly<Record<string, string>> = {
  "delivery.plasticatingRate": "screw rate",
  "delivery.recharge": stateNames.recharging,
  "delivery.deliveryRate": "rate of melt delivery",
  "valve.shift": "valve shift",
  "crew.walk": stateNames.walking,
};

/** `cooling`, `cooling, left`, `takeaway, trimmer, time`. */
export function leverName(paths: readonly string[]): string {
  const [path = ""] = paths;
  const known = nouns[path];
  if (known !== undefined) return known;
  const keys = path.split(/[.[\]]+/u).filter((key) => key !== "" && key !== "*");
  if (keys[0] !== "stations") return keys.map(spoken).join(", ");
  const where = /^stations[.[](?!\*)/u.test(path) ? paths.map((each) => placeIn(each)).join(" and ") : "";
  const rest = keys.slice(where === "" ? 1 : 2).filter((key) => key !== "steps");
  const isStep = keys.includes("steps");
  const what = rest
    .filter((key, i) => i === 0 || key !== "time")
    .map((key, i) => (isStep && i === 0 ? (stepNouns[key] ?? spoken(key)) : spoken(key)));
  return [...what, ...(where === "" ? [] : [where])].join(", ");
}

/** The station of a path. */
const placeIn = (path: string): string => {
  const [, name = "", index] = /^stations(?:\.([^.[]+)|\[(\d+)\])/u.exec(path) ?? [];
  return index === undefined ? name : `station ${Number(index) + 1}`;
};

/** `partMass` → `part mass`. */
const spoken = (key: string): string => key.replaceAll(/(?<=[a-z])[A-Z]/gu, (letter) => ` ${letter.toLowerCase()}`);
