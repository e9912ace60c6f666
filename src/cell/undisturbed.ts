// The cell as it would be if nothing ever went wrong: what an ideal cycle is made of.
import type { Scenario } from "#scenario/scenario.ts";

export function undisturbed(scenario: Scenario): Scenario {
  const { calendar: _calendar, startUp: _startUp, changes: _changes, ...daily } = scenario;
  const { stops: _stops, quality: _quality, maxInMold: _maxInMold, maxHang: _maxHang, ...calm } = daily;
  const { takeaway } = calm;
  return takeaway ? { ...calm, takeaway: takeaway.map((server) => ({ ...server, rejects: 0 })) } : calm;
}
