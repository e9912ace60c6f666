// The part of the address after `#`: scenario, place, units and the values of the place, so that a link leads back to them.
import type { UnitSystem } from "#foundation/formatQuantity.ts";

export interface Address {
  /** The file's name. */
  readonly scenario?: string;
  /** Its id. */
  readonly place?: string;
  /** SI where absent. */
  readonly units?: UnitSystem;
  /** What the place keeps, such as each `set` of Try. */
  readonly values: Readonly<Record<string, readonly string[]>>;
}

export interface AddressTerms {
  readonly places: readonly string[];
  /** The keys of all places. */
  readonly keys: readonly string[];
}

export type AddressReading = { readonly address: Address } | { readonly fault: string };

export function readAddress(hash: string, { places, keys }: AddressTerms): AddressReading {
  const { scenario, place, units, ...values } = grouped(hash);
  const known = ["scenario", "place", "units", ...keys];
  const strange = Object.keys(values).find((key) => !keys.includes(key));
  if (strange !== undefined) return refused(`it has the part "${strange}"`, `The parts are ${known.join(", ")}`);
  const [file, ...otherFiles] = scenario ?? [];
  const [id, ...otherPlaces] = place ?? [];
  const [system, ...otherUnits] = units ?? [];
  if (otherFiles.length + otherPlaces.length + otherUnits.length > 0)
    return refused("it names two scenarios, places or units", "Name one");
  if (id !== undefined && !places.includes(id))
    return refused(`it names the place "${id}"`, `The places are ${places.join(", ")}`);
  if (system !== undefined && system !== "si" && system !== "us")
    return refused(`it names the units "${system}"`, "The units are si and us");
  return {
    address: {
      ...(file === undefined ? {} : { scenario: file }),
      ...(id === undefined ? {} : { place: id }),
      ...(system === undefined ? {} : { units: system }),
      values,
    },
  };
}

/** Without `#`. */
export function addressText({ scenario, place, units = "si", values }: Address): string {
  const parts: (readonly [string, string])[] = [
    ...(scenario === undefined ? [] : [["scenario", scenario] as const]),
    ...(place === undefined ? [] : [["place", place] as const]),
    ...(units === "si" ? [] : [["units", units] as const]),
    ...Object.entries(values).flatMap(([key, texts]) => texts.map((text) => [key, text] as const)),
  ];
  return new URLSearchParams(parts.map(([key, text]) => [key, text])).toString();
}

function grouped(hash: string): Readonly<Record<string, readonly string[]>> {
  const parts = new URLSearchParams(hash.replace(/^#/u, ""));
  return Object.fromEntries([...new Set(parts.keys())].map((key) => [key, parts.getAll(key)]));
}

const refused = (why: string, remedy: string): { readonly fault: string } => ({
  fault: `The part of the address after # cannot be used: ${why}. ${remedy}.`,
});
