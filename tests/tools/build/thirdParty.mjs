// Lists the packages whose code is in a bundle, with their licenses, from the bundle's list of files.
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import { root } from "./bundleSettings.mjs";
import { withinCore } from "./wasmCore.mjs";

const read = (...place) => readFileSync(path.join(root, ...place), "utf8");

/** The files of each package in the metafiles of a bundle, by the package's folder. */
function filesByFolder(metafiles) {
  const byFolder = new Map();
  const inputs = metafiles.flatMap((metafile) => Object.keys(metafile.inputs));
  for (const file of new Set([...inputs, ...withinCore(inputs)])) {
    const folder = file.match(/^.*node_modules\/(?:@[^/]+\/)?[^/]+/)?.[0];
    if (folder !== undefined) byFolder.set(folder, [...(byFolder.get(folder) ?? []), file]);
  }
  return byFolder;
}

/** The text of the license file, or else the license section of the README. */
function licenceText(folder) {
  const names = readdirSync(path.join(root, folder)).toSorted();
  const own = names.filter((name) => /^(?:licen[cs]e|copying|notice)/i.test(name));
  if (own.some((name) => !/^notice/i.test(name))) return own.map((name) => read(folder, name).trim()).join("\n\n");
  const readme = names.find((name) => /^readme/i.test(name));
  return (readme && /^#* *licen[cs]e[^\n]*\n.*/ims.exec(read(folder, readme))?.[0].trim()) ?? "";
}

/** License comments of third authors inside the code, which bundling drops. */
function noticesInside(files) {
  const comments = files.flatMap((file) => read(file).match(/\/\*.*?\*\/|(?:^[ \t]*\/\/.*\n)+/gms) ?? []);
  const plain = (comment) => comment.replace(/^[ \t]*(?:\/\*+!?|\*\/|\*|\/\/+)[ \t]?|\*+\/$/gm, "").trim();
  const grants = /permission is hereby granted|permission to use, copy|redistribution and use|freely granted/i;
  return [...new Set(comments.map(plain).filter((comment) => grants.test(comment)))];
}

function entryOf([folder, files]) {
  const { name, version, license } = JSON.parse(read(folder, "package.json"));
  if (typeof license !== "string" || license === "") throw new Error(`${name} names no licence.`);
  const text = licenceText(folder);
  if (text === "") throw new Error(`${name} brings no text of its licence.`);
  return { title: `${name} ${version} (${license})`, text: [text, ...noticesInside(files)].join("\n\n") };
}

/** Name, version, license and license text of every package, equal texts once; throws for a package without a license text. */
export function thirdParty(metafiles) {
  const titles = new Map();
  for (const { title, text } of [...filesByFolder(metafiles)].map(entryOf))
    titles.set(text, [...(titles.get(text) ?? []), title]);
  const entries = [...titles].map(([text, names]) => `${names.toSorted().join("\n")}\n\n${text}`).toSorted();
  const head = "Code of these packages is part of the files in this folder. Their licences:";
  return `${[head, ...entries].join(`\n\n${"-".repeat(80)}\n\n`)}\n`;
}
