// Holds CSV files to RFC 4180, read with csv-parse.
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toCsv, toCsvPieces } from "#report/tables/csv.ts";
import { fillTable, type Cell, type ColumnSpec, type Table } from "#report/tables/table.ts";

const textColumn: ColumnSpec = { name: "words", type: "text", meaning: "" };
const numberColumn: ColumnSpec = { name: "value", type: "number", meaning: "" };
const flagColumn: ColumnSpec = { name: "flag", type: "boolean", meaning: "" };

const tableOf = (rows: Table["rows"], columns = [textColumn, numberColumn, flagColumn]) =>
  fillTable({ name: "sample", meaning: "", columns }, rows);
const linesOf = (cells: readonly Cell[], column: ColumnSpec) =>
  toCsv(
    tableOf(
      cells.map((cell) => [cell, true]),
      [column, flagColumn],
    ),
  ).split("\r\n");
const readBack = (csv: string): string[][] => parse(csv);

describe("a CSV file", () => {
  it("has a header and ends every row, the last too, with CRLF (RFC 4180, 2.1-2.3 [M])", () => {
    expect(toCsv(tableOf([["a", 1.5, true]]))).toBe("words,value,flag\r\na,1.5,true\r\n");
  });

  it("has a header without rows", () => {
    expect(toCsv(tableOf([]))).toBe("words,value,flag\r\n");
  });

  it("encloses commas, quotes and line breaks in quotes and doubles the quotes (RFC 4180, 2.6-2.7 [M])", () => {
    expect(linesOf(['a,"b"'], textColumn)[1]).toBe('"a,""b""",true');
    expect(readBack(toCsv(tableOf([["two\nlines\r\nmore\rend", 1, false]])))[1]?.[0]).toBe("two\nlines\r\nmore\rend");
  });

  it("gives any text back through csv-parse, except for the apostrophe before a formula", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ minLength: 1, unit: "grapheme" }), { minLength: 1 }), (texts) => {
        const cells = readBack(toCsv(tableOf(texts.map((text) => [text, 0, true])))).slice(1);
        const plain = (text = ""): string => text.replace(/^'(?=[=+\-@\t\r＝＋－＠])/, "");
        // A text that has such an apostrophe keeps it.
        expect(cells.map(([text]) => plain(text))).toEqual(texts.map(plain));
      }),
    );
  });

  it.each(["=1+1", "+1", "-1", "@sum", "\tx", "\rx"])(
    "neutralizes %j as a formula (OWASP, CSV injection [M])",
    (formula) => {
      expect(readBack(toCsv(tableOf([[formula, 0, true]])))[1]?.[0]).toBe(`'${formula}`);
    },
  );

  it("is the same in pieces as in one text, and gives every row back through csv-parse", () => {
    const words = fc.stringMatching(/^(?:[a-z][a-z ,"\r\n]*)?$/);
    const row = fc.tuple(fc.option(words), fc.option(fc.integer()), fc.option(fc.boolean()));
    fc.assert(
      fc.property(fc.array(row), fc.array(row), (first, second) => {
        const { rows, ...spec } = tableOf([...first, ...second]);
        const whole = toCsv({ ...spec, rows });
        expect([...toCsvPieces({ ...spec, batches: [first, second] })].join("")).toBe(whole);
        expect(readBack(whole).slice(1)).toEqual(rows.map((cells) => cells.map((cell) => String(cell ?? ""))));
      }),
    );
  });

  it("does not neutralize negative numbers", () => {
    expect(linesOf([-1.5], numberColumn)[1]).toBe("-1.5,true");
  });

  it("has 10 significant digits at most", () => {
    const written = linesOf([1 / 3, 123456.78949, 1e10 / 3, 3, 1e21, 2 / 3e9, 0.1 + 0.2, -0], numberColumn);
    const expected = "0.3333333333 123456.7895 3333333333 3 1e+21 6.666666667e-10 0.3 0".split(" ");
    expect(written.slice(1, -1)).toEqual(expected.map((digits) => `${digits},true`));
  });

  it("agrees with any number within half a unit of its tenth digit", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e300, max: 1e300 }), (value) => {
        fc.pre(value === 0 || Math.abs(value) > 1e-300);
        const written = Number(linesOf([value], numberColumn)[1]?.split(",")[0]);
        expect(Math.abs(written - value)).toBeLessThanOrEqual(5.000001e-10 * Math.abs(value));
      }),
    );
  });

  it("has empty cells for NaN, infinity and null", () => {
    expect(linesOf([Number.NaN, Number.POSITIVE_INFINITY, null], numberColumn).slice(1, -1)).toEqual(
      Array(3).fill(",true"),
    );
  });
});

describe("a table", () => {
  it("refuses a row of another length", () => {
    expect(() => tableOf([["a", 1]])).toThrow("one cell a column");
  });

  it.each([
    [textColumn, 1],
    [numberColumn, "1"],
    [flagColumn, 0],
    [{ name: "count", type: "integer", meaning: "" } as const, 1.5],
  ])("refuses in %o the cell %o", (column, cell) => {
    expect(() => tableOf([[cell]], [column])).toThrow("what its column says");
  });
});
