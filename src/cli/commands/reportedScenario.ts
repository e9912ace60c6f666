// Adds to a study what its report needs: a few shots, the file and the options of the call.
import { firstShots, leadingInCycle } from "#analysis/study/firstShots.ts";
import type { Study } from "#analysis/study/study.ts";
import type { ReportedScenario } from "#report/page/reported.ts";
import type { LoadedScenario } from "./loadScenarios.ts";

export function reportedScenario(study: Study, { text, settings, issues }: LoadedScenario): ReportedScenario {
  return {
    study,
    shots: firstShots(study.scenario, leadingInCycle(study)),
    text,
    settings,
    issues: [...issues, ...study.warnings],
  };
}
