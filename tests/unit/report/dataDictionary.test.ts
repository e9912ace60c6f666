// Holds the shipped data dictionary to the table descriptions, and the descriptions to naming rules.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { dataDictionary } from "#report/tables/dataDictionary.ts";
import { tableSpecs } from "#report/tables/tableSpecs.ts";

const shipped = readFileSync(new URL("../../../reports/README.md", import.meta.url), "utf8");

describe("the data dictionary", () => {
  it("that is shipped equals the generated one (npm run generate)", () => {
    expect(shipped).toBe(dataDictionary(tableSpecs));
  });

  it("lists every file once, and every column of a file once with its meaning", () => {
    const files = tableSpecs.map(({ name }) => name);
    expect(new Set(files).size).toBe(files.length);
    for (const { name, columns } of tableSpecs) {
      const names = columns.map((column) => column.name);
      expect(new Set(names).size, name).toBe(names.length);
      expect(columns.filter(({ meaning }) => meaning === "")).toEqual([]);
    }
  });

  it("has column names of lower-case letters, digits and underscores", () => {
    const names = tableSpecs.flatMap(({ columns }) => columns.map(({ name }) => name));
    expect(names.filter((name) => !/^[a-z][a-z0-9_]*$/.test(name))).toEqual([]);
  });

  it("escapes a bar in a meaning", () => {
    const columns = [{ name: "a", type: "text", meaning: "this | that" }] as const;
    expect(dataDictionary([{ name: "x", meaning: "", columns }])).toContain("this \\| that");
  });
});
