// The checksum of a text.
import { createHash } from "node:crypto";

/** SHA-256 (FIPS 180-4) of the text in UTF-8, in hexadecimal digits. */
export function checksum(text: string): string {
  return createHash("sha256").update(text).digest("hex");
}
