// The part of the address after `#`: scenario, place and the values of the place, so that a link leads back to them.

export interface Address {
  /** The file's name. */
  readonly scenario?: string;
  /** Its id. */
  readonly place?: string;
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
  const { scenario, place, ...values } = grouped(hash);
  const known = ["scenario", "place", ...keys];
  const strange = Object.keys(values).find((key) => !keys.includes(key));
  if (strange !== undefined) return refused(`it has the part "${strange}"`, `The parts are ${known.join(", ")}`);
  const [file, ...otherFiles] = scenario ?? [];
  const [id, ...otherPlaces] = place ?? [];
  if (otherFiles.length + otherPlaces.length > 0) return refused("it names two scenarios or places", "Name one");
  if (id !== undefined && !places.includes(id))
    return refused(`it names the place "${id}"`, `The places are ${places.join(", ")}`);
  return {
    address: {
      ...(file === undefined ? {} : { scenario: file }),
      ...(id === undefined ? {} : { place: id }),
      values,
    },
  };
}

/** Without `#`. */
export function addressText({ scenario, place, values }: Address): string {
  const parts: (readonly [string, string])[] = [
    ...(scenario === undefined ? [] : [["scenario", scenario] as const]),
    ...(place === undefined ? [] : [["place", place] as const]),
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
