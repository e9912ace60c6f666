// The cell as it would be if nothing ever went wrong: what an ideal cycle is made of.
import type { Scenario, ServerSpec } from "#scenario/scenario.ts";

export function undisturbed(scenario: Scenario): Scenario {
  const { calendar: _calendar, startUp: _startUp, changes: _changes, ...daily } = scenario;
  const { stops: _stops, quality: _quality, maxInMold: _maxInMold, maxHang: _maxHang, ...calm } = daily;
  const { takeaway } = calm;
  if (!takeaway) return calm;
  // What a buffer holds beyond a few shots of every station covers for disturbances alone.
  const room = shotsCovered * scenario.stations.reduce((sum, { cavities }) => sum + cavities, 0);
  return { ...calm, takeaway: takeaway.map((server) => calmServer(server, room)) };
}

const shotsCovered = 4;

function calmServer({ maxAge: _maxAge, ...server }: ServerSpec, room: number): ServerSpec {
  return { ...server, rejects: 0, buffer: Math.min(server.buffer, room) };
}
