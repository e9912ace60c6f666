// The scenario without stops, rejects, shifts and changes, for the ideal cycle.
import type { Scenario, ServerSpec } from "#scenario/scenario.ts";

export function undisturbed(scenario: Scenario): Scenario {
  const { calendar: _calendar, startUp: _startUp, changes: _changes, ...daily } = scenario;
  const { stops: _stops, quality: _quality, maxInMold: _maxInMold, maxHang: _maxHang, ...quiet } = daily;
  const { takeaway } = quiet;
  if (!takeaway) return quiet;
  // Buffer room beyond a few shots of every station only absorbs disturbances.
  const room = shotsCovered * scenario.stations.reduce((sum, { cavities }) => sum + cavities, 0);
  return { ...quiet, takeaway: takeaway.map((server) => undisturbedServer(server, room)) };
}

const shotsCovered = 4;

function undisturbedServer({ maxAge: _maxAge, ...server }: ServerSpec, room: number): ServerSpec {
  return { ...server, rejects: 0, buffer: Math.min(server.buffer, room) };
}
