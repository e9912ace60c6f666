// Every code that any part of the program may give, with its meaning and its general remedy.
import { standstillCodes } from "#analysis/study/standstillIssue.ts";
import { warmUpIssueCodes } from "#analysis/statistics/warmUpSearch.ts";
import { estimateIssueCodes } from "#analysis/window/settleEstimates.ts";
import { campaignIssueCodes } from "#analysis/promise/orderCampaigns.ts";
import { impossibleOrderCodes } from "#analysis/promise/impossibleOrder.ts";
import { optionIssueCodes } from "#cli/call/optionIssues.ts";
import { nameIssueCodes } from "#cli/call/nameIssues.ts";
import { variantIssueCodes } from "#cli/call/variants.ts";
import { folderIssueCodes } from "#cli/output/earlierRun.ts";
import { pageIssueCodes } from "#cli/output/pagePlace.ts";
import { fileIssueCodes } from "#cli/machine/readTextFile.ts";
import type { IssueMeaning } from "#foundation/issue.ts";
import { issueCodes } from "#scenario/reading/issueCodes.ts";
import { compareIssueCodes } from "./compare.ts";
import { layoutIssueCodes } from "./layoutIssues.ts";
import { mergeIssueCodes } from "#cli/sweep/mergedRecords.ts";
import { chooseIssueCodes } from "#cli/choose/chooseIssues.ts";
import { sweepIssueCodes } from "#cli/sweep/points.ts";
import { varyIssueCodes } from "#scenario/reading/variedValues.ts";
import { logIssueCodes } from "#analysis/log/logColumns.ts";
import { matchIssueCodes } from "#cli/call/matchOptions.ts";
import { recordIssueCodes } from "#cli/call/recordOptions.ts";
import { fitIssueCodes } from "./fitInto.ts";
import { newIssueCodes } from "./new.ts";
import { lessonCodes } from "#report/lessons/lessonIssues.ts";
import { explainIssueCodes } from "#report/explain/findTopics.ts";

/** A code that several parts give stands once, as the last of them has it. */
export const issueMeanings: ReadonlyMap<string, IssueMeaning> = new Map(
  [
    fileIssueCodes,
    issueCodes,
    optionIssueCodes,
    nameIssueCodes,
    campaignIssueCodes,
    impossibleOrderCodes,
    variantIssueCodes,
    folderIssueCodes,
    pageIssueCodes,
    compareIssueCodes,
    layoutIssueCodes,
    varyIssueCodes,
    sweepIssueCodes,
    mergeIssueCodes,
    chooseIssueCodes,
    standstillCodes,
    warmUpIssueCodes,
    estimateIssueCodes,
    newIssueCodes,
    logIssueCodes,
    fitIssueCodes,
    matchIssueCodes,
    recordIssueCodes,
    explainIssueCodes,
    lessonCodes,
  ].flatMap((codes) => Object.entries<IssueMeaning>(codes)),
);
