// Bundles the scripts of the page and compresses them for `blowcell page`.
import { createHash } from "node:crypto";
import { gzipSync } from "node:zlib";
import path from "node:path";
import { bundleSettings, root } from "./bundleSettings.mjs";
import { course } from "./course.mjs";
import { thirdParty } from "./thirdParty.mjs";

/** Modules of @stdlib that the page replaces, by the end of their path. */
const replaced = {
  // It tries by `eval` whether there are generators. The policy of the page forbids that, and another algorithm would be chosen.
  "assert-has-generator-support/lib/index.js": "module.exports = () => true;",
  // It writes to the console.
  "debug/src/browser.js": "module.exports = () => () => {};",
};

const replacing = {
  name: "replacing",
  setup({ onLoad }) {
    for (const [file, contents] of Object.entries(replaced))
      onLoad({ filter: new RegExp(`${file.replaceAll("/", ".").replaceAll(".js", "\\.js")}$`) }, () => ({ contents }));
  },
};

/** Classic scripts: browsers start no worker from a module in a file of the disk. */
const settings = {
  ...bundleSettings,
  platform: "browser",
  // The first versions that open compressed parts, or later.
  target: ["chrome107", "firefox113", "safari16.4"],
  format: "iife",
  globalName: "blowcell",
  external: [],
  plugins: [...bundleSettings.plugins, replacing],
  banner: {},
  minify: true,
  charset: "utf8",
  legalComments: "none",
  metafile: true,
  write: false,
};

const inPage = (name) => path.join(root, `src/page/${name}.ts`);

/** Nothing in base64 ends the element that it is in. */
const packed = (text) => gzipSync(text, { level: 9 }).toString("base64");

const hash = (text) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;

/** The parts as JSON, and the files of their bundles. */
export async function pageParts(esbuild) {
  const bundles = await Promise.all(
    ["opener", "program"].map((name) => esbuild.build({ ...settings, entryPoints: [inPage(name)] })),
  );
  const metafiles = bundles.map(({ metafile }) => metafile);
  const [opener, program] = bundles.map(({ outputFiles }) => outputFiles[0].text);
  if (opener.includes("</script")) throw new Error("The opener would end its own element.");
  const parts = {
    opener,
    program: packed(program),
    licenses: packed(thirdParty(metafiles)),
    course: packed(JSON.stringify(course())),
    hashes: [opener, program].map(hash),
  };
  return { text: JSON.stringify(parts), metafiles };
}
