// The steps of the cell: the role of each, by which the program finds it, and its name, by which tables call it.

/** A role is spelled unlike any name, so that neither is taken for the other. */
export const stepNames = {
  "screw.recharge": "recharge",
  "screw.fillBeyond": "fill beyond the shot",
  "screw.firstShot": "fill at first",
  "screw.fillUp": "fill to the brim",
  "screw.hold": "hold",
  "screw.extrude": "parison",
  "screw.overrun": "tail",
  "screw.heat": "heat up",
  "screw.purge": "purge",
  "screw.resume": "work again",

  "rest.awaitStops": "until every station is stopped",
  "rest.allStopped": "every station is stopped",
  "rest.begin": "stop the screw",
  "rest.awaitStation": "until a station goes on",

  "valve.toPort": "shift to port",
  "valve.toHead": "shift to head",
  "valve.toNeutral": "shift to neutral",
  "valve.neutral": "neutral",

  "head.awaitCall": "await a call",
  "head.await": "stand at the head",
  "ram.seeShot": "see a shot",
  "ram.rest": "come to rest",

  "mold.callMelt": "call for melt",
  "mold.pushRam": "ram moves",
  "mold.drop": "drop",
  "mold.emptyRam": "ram is empty",
  "mold.travelIn": "travel in",
  "mold.catch": "catch the parison",
  "mold.close": "close",
  "mold.cut": "cut",
  "mold.leaveDie": "leave the die",
  "mold.travelOut": "travel out",
  "mold.blow": "blow",
  "mold.cool": "cool",
  "mold.vent": "vent",
  "mold.open": "open",
  "mold.remove": "remove",
  "mold.handToMask": "hand to the mask",
  "mold.loseDrop": "give up the drop",
  "mold.loseDieZone": "give up the die zone",
  "mold.loseParison": "give up the parison",
  "mold.losePart": "give up the part",
  "mold.loseShot": "give up the shot",
  "mold.clear": "clear",
  "mold.ready": "ready again",

  "crew.releaseFromRemoval": "let go",
  "crew.releaseFromClearing": "let go after clearing",
  "crew.releaseFromRepair": "let go after the repair",
  "crew.releaseFromPacking": "let go",
  "crew.leave": "leave",
  "crew.onBreak": "on break",
  "crew.return": "come back",

  "judge.moldClock": "look at the mold clock",
  "judge.restart": "look for a restart",
  "judge.forgetMoldClock": "forget the mold clock",
  "judge.allRejected": "all rejected",
  "judge.done": "parts judged",
  "moldClock.awaitShut": "until it is shut",
  "moldClock.shut": "shut",
  "moldClock.overdue": "overdue",
  "moldClock.awaitOpen": "until it opens",
  "idleClock.awaitShot": "await a shot",
  "idleClock.idle": "idle",
  "idleClock.awaitFirstShot": "await the first shot",

  "server.take": "take a part",
  "server.check": "check",
  "server.passOn": "pass on",
  "server.refuse": "refuse",
  "server.makeRoom": "make room",
  "age.ripen": "age",
  "age.awaitTaken": "until it is taken",
  "age.tooOld": "too old",

  "stop.awaitRepair": "await the repair",
  "stop.awaitShift": "await the shift",
  "stop.answerCall": "answer the call",
  "stop.counted": "goes on",

  "calendar.await": "on shift",
  "calendar.leave": "leave",
  "calendar.off": "off shift",
  "calendar.nextShift": "next shift",
  "calendar.awaitScrew": "await the screw",
  "calendar.end": "to the end",
  "change.awaitScrew": "await the screw",
  "change.end": "go on",
} as const;

/** Names of steps that come several times in a process, by number, or that are called after something. */
export const subjectNames = {
  "screw.fillShot": (shot) => `fill for shot ${shot}`,
  "judge.inspect": (cavity) => `inspect ${cavity}`,
  "judge.weigh": (cavity) => `weigh ${cavity}`,
  "judge.tooLight": (cavity) => `too light ${cavity}`,
  "judge.tooHeavy": (cavity) => `too heavy ${cavity}`,
  "judge.weighReject": (cavity) => `weigh reject ${cavity}`,
  "judge.partDone": (cavity) => `part ${cavity} judged`,
  "judge.inspectRejected": (cavity) => `inspect rejected ${cavity}`,
  "judge.weighRejected": (cavity) => `weigh rejected ${cavity}`,
  "part.handOver": (cavity) => `hand over ${cavity}`,
  "crew.call": (step) => `call for ${step}`,
  "crew.walk": (step) => `walk to ${step}`,
  "stop.await": (stop) => `until ${stop}`,
  "stop.awaitFirst": (stop) => `until the first ${stop}`,
  "stop.takeUp": (stop) => `repair of ${stop}`,
  "stop.repair": (stop) => `repair of ${stop}`,
  "change.await": (station) => `await ${station}`,
} as const satisfies Readonly<Record<string, (subject: string | number) => string>>;

type FixedRole = keyof typeof stepNames;
type SubjectRole = keyof typeof subjectNames;
/** Steps that bear names of the scenario: an extra step, a server's work, a change, a stop that begins. */
type UserRole = "mold.own" | "server.work" | "change.work" | "stop.begin";
/** No step of the table: what a resource does while a stop holds it. */
type StopRole = "stop.stand";

export type StepRole = FixedRole | SubjectRole | UserRole | StopRole;

export function named<Role extends FixedRole>(role: Role): { readonly role: Role; readonly name: string } {
  return { role, name: stepNames[role] };
}

export function namedAfter(
  role: SubjectRole,
  subject: string | number,
): { readonly role: SubjectRole; readonly name: string } {
  return { role, name: subjectNames[role](subject) };
}
