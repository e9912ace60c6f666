// The table of a fit: one row a candidate of a step, a repair or a time between stops.
import type { Candidate } from "#analysis/fit/candidates.ts";
import type { Fit, LogFit } from "#analysis/fit/logFit.ts";
import { halfWidth, integer, number, text, truth } from "#report/tables/columns.ts";
import { fillTable, type Cell, type ColumnSpec, type Table, type TableSpec } from "#report/tables/table.ts";
import { distributionText } from "./fitWords.ts";

const mostParameters = 3;
const numbers = Array.from({ length: mostParameters }, (_, i) => i + 1);

function parameterColumns(place: number): readonly ColumnSpec[] {
  return [
    text(`parameter_${place}`, "Name of the parameter, as a scenario has it; a mean or a limit is in s"),
    number(`value_${place}`, "Value of the parameter by maximum likelihood"),
    number(`low_${place}`, "Low end of its 95 % interval; only of the suggested distribution"),
    number(`high_${place}`, "High end of its 95 % interval; only of the suggested distribution"),
  ];
}

export const fitSpec: TableSpec = {
  name: "fit",
  meaning: "One distribution for a step, a repair or the time between stops of a log, in the order of AIC.",
  columns: [
    text("station", "Station or resource, as the log names it"),
    text("step", "Step or stop, as the log names it"),
    text("kind", "`step`, `repair` or `between`: from the end of one stop to the next"),
    integer("count", "Number of times in the log"),
    integer("censored", "Times that the end of the log cut off"),
    number("mean", "Mean of the times in the log", "s"),
    number("sd", "Standard deviation of the times in the log (n − 1)", "s"),
    number("min", "Smallest time in the log", "s"),
    number("max", "Largest time in the log", "s"),
    number("autocorrelation", "Correlation of one time and the next; a drawn time has 0"),
    halfWidth("autocorrelation_half_width_95", "the autocorrelation"),
    number("drift", "Change over the whole log, from the straight line by least squares", "s"),
    halfWidth("drift_half_width_95", "the drift", "s"),
    text("distribution", "Kind of distribution, as a scenario names it, or `constant`"),
    truth("suggested", "Whether this is the suggestion"),
    text("reason", "Why it is suggested, or why a scenario cannot have it"),
    text("scenario_value", "The suggestion as a scenario takes it"),
    ...numbers.flatMap(parameterColumns),
    number("log_likelihood", "Logarithm of the likelihood of the values that were fitted"),
    number("aic", "Akaike's information criterion: 2 × parameters − 2 × log likelihood; the smallest is the best"),
    number("anderson_darling", "Anderson-Darling statistic of at most 500 values; only of the three smallest AIC"),
    number("anderson_darling_p", "Share of bootstrap samples of the fitted distribution that lie as far away"),
    number("kolmogorov_smirnov", "Kolmogorov-Smirnov statistic of at most 500 values"),
    number("kolmogorov_smirnov_p", "Share of bootstrap samples of the fitted distribution that lie as far away"),
  ],
};

export function fitTable({ fits }: LogFit): Table {
  return fillTable(fitSpec, fits.flatMap(fitRows));
}

function fitRows(fit: Fit): readonly (readonly Cell[])[] {
  const { suggestion, candidates } = fit;
  const kind = suggestion?.distribution.kind;
  const isListed = candidates.some((candidate) => candidate.kind === kind);
  const own = suggestion !== undefined && !isListed ? [[...seriesCells(fit), ...suggestedCells(fit), ...blanks]] : [];
  return [
    ...own,
    ...candidates.map((candidate) => [
      ...seriesCells(fit),
      ...(candidate.kind === kind ? suggestedCells(fit) : [candidate.kind, false, candidate.unfit ?? null, null]),
      ...candidateCells(candidate),
    ]),
  ];
}

function seriesCells({ station, step, kind, censored, summary }: Fit): readonly Cell[] {
  const { count, mean, sd, min, max, autocorrelation, drift } = summary;
  const correlated = [autocorrelation?.value ?? null, autocorrelation?.halfWidth ?? null];
  return [
    station,
    step,
    kind,
    count,
    censored,
    mean,
    sd,
    min,
    max,
    ...correlated,
    drift?.value ?? null,
    drift?.halfWidth ?? null,
  ];
}

function suggestedCells({ suggestion }: Fit): readonly Cell[] {
  const { distribution, reason } = suggestion!;
  return [distribution.kind === "fixed" ? "constant" : distribution.kind, true, reason, distributionText(distribution)];
}

const blanks: readonly Cell[] = Array.from<Cell>({ length: 4 * mostParameters + 6 }).fill(null);

function candidateCells({ names, parameters, ranges, logLikelihood, aic, tests }: Candidate): readonly Cell[] {
  const cells = numbers.flatMap((_, i) => [
    names[i] ?? null,
    parameters[i] ?? null,
    ranges?.[i]?.[0] ?? null,
    ranges?.[i]?.[1] ?? null,
  ]);
  const found = tests && [
    tests.andersonDarling,
    tests.andersonDarlingP,
    tests.kolmogorovSmirnov,
    tests.kolmogorovSmirnovP,
  ];
  return [...cells, logLikelihood, aic, ...(found ?? [null, null, null, null])];
}
