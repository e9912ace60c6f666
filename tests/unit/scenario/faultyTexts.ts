// Texts with YAML errors, or with parts of YAML that the format excludes.
import type { FaultySpec } from "./faultySpec.ts";

export const faultyTexts: readonly FaultySpec[] = [
  {
    name: "a repeated key",
    edits: [["crew:", "¦title: again\ncrew:"]],
    found: [{ code: "duplicate-key", path: "", says: "`title`", remedy: "Delete one" }],
  },
  {
    name: "a repeated key and another fault",
    edits: [
      ["vent: 0.5 s", "vent: ¦0.5"],
      ["crew:", "¦title: again\ncrew:"],
    ],
    found: [
      { code: "unit-missing", path: "stations.right.steps.vent", says: "0.5", remedy: "`0.5 s`" },
      { code: "duplicate-key", path: "", says: "`title`", remedy: "Delete one" },
    ],
  },
  {
    name: "an anchor and its alias",
    edits: [
      ["close: 0.6 s", "close: &t ¦0.6 s"],
      ["open: 0.6 s", "open: ¦*t"],
    ],
    found: [
      { code: "yaml-anchor", path: "", says: "&t", remedy: "Delete the anchor" },
      { code: "yaml-anchor", path: "", says: "Aliases", remedy: "Write the value out" },
    ],
  },
  {
    name: "a merge key",
    edits: [["crew: { operators: 1 }", "crew: { operators: 1, ¦<<: { operators: 2 } }"]],
    found: [{ code: "yaml-anchor", path: "crew.<<", says: "Merge keys", remedy: "Write the keys out" }],
  },
  {
    name: "a tag",
    edits: [["seed: demo", "seed: !!str ¦7"]],
    found: [{ code: "yaml-tag", path: "", says: "!!str", remedy: "quotes" }],
  },
  {
    name: "a list as a key",
    edits: [["crew:", "? ¦[a]\n: 1\ncrew:"]],
    found: [{ code: "yaml-key", path: "", says: "as keys", remedy: "plain word" }],
  },
  {
    name: "a word that JavaScript keeps for itself as a key",
    edits: [["crew:", "takeaway: { ¦__proto__: { time: 1 s } }\ncrew:"]],
    found: [{ code: "yaml-key", path: "", says: "`__proto__`", remedy: "another word" }],
  },
  {
    name: "a directive",
    edits: [["# $schema: ./scenario.schema.json\n", "¦%YAML 1.1\n---\n"]],
    found: [{ code: "yaml-directive", path: "", says: "%YAML", remedy: "Delete the line" }],
  },
  {
    name: "two documents",
    edits: [["crew:", "¦---\ncrew:"]],
    found: [{ code: "yaml-documents", path: "", says: "more than one", remedy: "one scenario a file" }],
  },
  {
    name: "a tab to indent",
    edits: [["  material: HDPE", "¦\tmaterial: HDPE"]],
    found: [{ code: "yaml-tab", path: "", says: "tab", remedy: "spaces" }],
  },
  {
    name: "a colon within a text",
    edits: [["title: Two-station", "title: ¦Cell: Two-station"]],
    found: [{ code: "yaml-syntax", path: "", says: "second colon", remedy: "quotes" }],
  },
];
