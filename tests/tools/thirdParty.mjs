// The packages whose code is in a bundle, from the bundle's own list of files, with their licences.
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import { root } from "./bundleSettings.mjs";

/** Folders of the packages that a bundle's metafiles name, each once, by name. */
export function packagesOf(metafiles) {
  const files = metafiles.flatMap((metafile) => Object.keys(metafile.inputs));
  const folders = files.flatMap((file) => file.match(/^.*node_modules\/(?:@[^/]+\/)?[^/]+/)?.[0] ?? []);
  return [...new Set(folders)].toSorted((a, b) => (a < b ? -1 : Number(a > b)));
}

/** Name, version, licence and its text of every package; throws where one has none, since it then may not be shipped. */
export function thirdParty(metafiles) {
  const entries = packagesOf(metafiles).map((folder) => {
    const place = path.join(root, folder);
    const { name, version, license } = JSON.parse(readFileSync(path.join(place, "package.json"), "utf8"));
    if (typeof license !== "string" || license === "") throw new Error(`${name} names no licence.`);
    const file = readdirSync(place).find((each) => /^(licen[cs]e|copying)/i.test(each));
    const text = file === undefined ? "" : readFileSync(path.join(place, file), "utf8").trim();
    return `${name} ${version} (${license})\n\n${text}`;
  });
  const head = "Code of these packages is part of the files beside this one. Their licences:";
  return `${[head, ...entries].join(`\n\n${"-".repeat(80)}\n\n`)}\n`;
}
