// Flash as people state it: a mass, or a share of the part or of the whole shot.
import { isQuantity, parseQuantity, quantityPattern } from "#foundation/quantity.ts";
import { leaf, refused, type Leaf, type LeafReading } from "./leaf.ts";
import { plainNumber, quantitySchema, readMass } from "./quantityLeaf.ts";

export type FlashSpec =
  { readonly of: "itself"; readonly milligrams: number } | { readonly of: "part" | "shot"; readonly share: number };

const expected = "`30 % of part`, `0.3 of part`, `25 % of shot`, or a mass such as `12 g`";
const shareOf = /^(.*(?:%|percent)|[\d.\s]+)\s*of\s+(part|shot)\s*$/u;
const shareOfPattern = String.raw`(?:${quantityPattern("share").slice(0, -1)}|^\s*(?:\d+\.?\d*|\.\d+)\s*)of\s+(?:part|shot)\s*$`;

export const flash: Leaf<FlashSpec> = leaf({
  expected,
  json: {
    anyOf: [{ title: "a share of part or shot", type: "string", pattern: shareOfPattern }, quantitySchema("mass")],
    examples: ["30 % of part"],
  },
  read: (written) => {
    const [, share, of] = typeof written === "string" ? (shareOf.exec(written) ?? []) : [];
    if (share !== undefined) return readShare(share, of === "shot" ? "shot" : "part");
    const bare = typeof written === "number" || (typeof written === "string" && plainNumber.test(written));
    if (bare || (typeof written === "string" && isQuantity(parseQuantity(written, "share")))) {
      const message = `It is not said of what ${written} is taken.`;
      const mass = bare ? `, or a mass such as \`${written} g\`` : "";
      const remedy = `Write \`${written} of part\` or \`${written} of shot\`${mass}.`;
      return refused({ code: "share-of-what", message, expected, remedy });
    }
    const reading = readMass(written);
    return "faults" in reading ? reading : { value: { of: "itself", milligrams: reading.value } };
  },
});

function readShare(text: string, of: "part" | "shot"): LeafReading<FlashSpec> {
  const reading = plainNumber.test(text) ? { value: Number(text) } : parseQuantity(text, "share");
  if (!("value" in reading)) return refused(reading);
  // Flash of a hundred times the part is a typing error.
  const most = of === "shot" ? 0.99 : 99;
  if (reading.value <= most) return { value: { of, share: reading.value } };
  const message = `${text} of the ${of} leaves next to nothing for the part.`;
  return refused({ code: "out-of-range", message, expected, remedy: "Check the share, and of what it is taken." });
}
