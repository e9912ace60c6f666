// The words from which the tables are described: one column a line, and the columns that many tables share.
import type { ColumnSpec } from "./table.ts";

const column =
  (type: ColumnSpec["type"]) =>
  (name: string, meaning: string, unit?: string): ColumnSpec =>
    unit === undefined ? { name, type, meaning } : { name, type, unit, meaning };

export const text = column("text");
export const number = column("number");
export const integer = column("integer");
export const truth = column("boolean");

export const scenarioColumn = text("scenario", "Name of the scenario: its file's name without folder and ending");
export const resourceColumn = text(
  "resource",
  "`cell` for the whole cell, else the name of a station or other resource",
);
export const measureColumn = text("measure", "What was measured, in plain words, such as `good parts per hour`");
export const unitColumn = text("unit", "Unit of the values in this row");
export const meanColumn = number("mean", "Mean over the replications");

/** The half width of the interval that holds the true value in 95 of 100 studies. */
export const halfWidth = (name: string, meaning: string, unit?: string): ColumnSpec =>
  number(name, `Half width of the 95 % confidence interval of ${meaning}; empty with one replication`, unit);
