// The report of a fit: a section a step with three pictures, the candidates and what is unusual.
import { families } from "#analysis/fit/families.ts";
import type { Fit, LogFit } from "#analysis/fit/logFit.ts";
import { distributionQuantile } from "#engine/distributions/moments.ts";
import type { Issue } from "#foundation/issue.ts";
import { element } from "#report/charts/markup.ts";
import { figure } from "#report/charts/chart.ts";
import { fitChart, type DrawnFit } from "#report/charts/fit/fitChart.ts";
import { htmlPage, type Section } from "#report/page/htmlPage.ts";
import { tableMarkup } from "#report/page/tableMarkup.ts";
import { fitFinding, fitHeadings, fitNotes, fitRow } from "./fitAnswer.ts";
import { fitTable } from "./fitTable.ts";
import { fitName, shortText, meanText, warningLine } from "./fitWords.ts";

/** A page with more pictures is slow to open; fit.csv has all. */
const mostSections = 60;

export function fitPage(fit: LogFit, warnings: readonly Issue[], version: string): string {
  const shown = fit.fits.slice(0, mostSections);
  const rest = fit.fits.length - shown.length;
  return htmlPage({
    version,
    title: `Fit of ${fit.name}`,
    questions: ["Which distributions do the measured times follow?"],
    finding: [...fitFinding(fit), ...fitNotes(fit), ...(rest > 0 ? [`${rest} more fits are in fit.csv.`] : [])],
    warnings: { warnings: warnings.map(warningLine), unusual: [] },
    sections: [allFits(fit.fits), ...shown.map((each, i) => fitSection(each, fit, `fit-${i + 1}`))],
  });
}

/** All fits at a glance. */
function allFits(fits: readonly Fit[]): Section {
  const rowMarkup = (cell: "th" | "td", cells: readonly string[]) =>
    element(
      "tr",
      {},
      cells.map((text) => element(cell, {}, text)),
    );
  const head = element("thead", {}, rowMarkup("th", fitHeadings));
  const rows = fits.map((fit) => rowMarkup("td", fitRow(fit)));
  const table = element("table", {}, head, element("tbody", {}, rows));
  const label = { class: "numbers", tabindex: "0", role: "region", "aria-label": "all fits" };
  return { id: "fits", heading: "All fits", body: [element("div", label, table)] };
}

function fitSection(fit: Fit, log: LogFit, id: string): Section {
  const heading = `${fit.station}: ${fitName(fit)}`;
  const { suggestion, summary } = fit;
  const found = suggestion
    ? `${shortText(suggestion.distribution)}: ${suggestion.reason}.`
    : "Too few times are known to fit a distribution.";
  const curves = drawn(fit);
  const panels = curves.quantile ? "a histogram, quantiles" : "a histogram";
  const description = `${summary.count} values, mean ${meanText(fit)}: ${panels} and the values in the order of the log.`;
  const picture = fitChart(curves, { id: `${id}-chart`, title: heading, description });
  const caption = [found, ...summary.warnings.map((warning) => ` Unusual: ${warning}.`)];
  const table = tableMarkup(fitTable({ ...log, fits: [fit] }), { id, file: "fit" });
  return { id, heading, body: [figure(heading, { picture, caption, table })] };
}

function drawn({ summary: { values, sorted }, suggestion, candidates }: Fit): DrawnFit {
  const kind = suggestion?.distribution.kind;
  const family = families.find((each) => each.kind === kind);
  const candidate = candidates.find((each) => each.kind === kind);
  if (!family || !candidate || !suggestion) return { values, sorted };
  const probability = family.probability(candidate.parameters);
  return { values, sorted, probability, quantile: distributionQuantile(suggestion.distribution) };
}
