// Holds the picture of a cell to its scene: halves, parisons, ports, screw, words, names and elements.
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pictureStyle } from "#report/picture/pictureStyle.ts";
import { scenePicture, type PictureOptions } from "#report/picture/scenePicture.ts";
import type { Scene, SceneMold } from "#report/scene/scene.ts";
import { builtMelt, builtScene, builtStation, builtStations } from "../../../support/builtScene.ts";
import { openValve, sceneGallery } from "../../../support/sceneGallery.ts";

function pictured(scene: Scene, options: Partial<PictureOptions> = {}): string {
  return scenePicture(scene, { id: "p", width: "wide", chosen: "", units: "si", ...options }).code;
}

function withMold(mold: Partial<SceneMold>, delivery: Scene["delivery"] = "reciprocating-screw"): string {
  return pictured(builtScene({ delivery, stations: [builtStation({ cavities: 1, mold })] }));
}

/** Where the parting faces of the two halves are. */
function faces(code: string): readonly number[] {
  return [...code.matchAll(/class="steel half" d="M\S+ \S+L\S+ [^V]*V[^H]*H(-?[\d.]+)/gu)].map(([, x]) => Number(x));
}

/** The top of each half and its lower end. */
function heightOfHalves(code: string): readonly [top: number, bottom: number] {
  const [, top, bottom] = /class="steel half" d="M\S+ ([\d.]+)V.*?H[\d.]+V([\d.]+)H/u.exec(code)!;
  return [Number(top), Number(bottom)];
}

/** Upper and lower end of the first parison. */
function parisonEnds(code: string): readonly [top: number, bottom: number] | null {
  const found = /class="tube"><path d="M\S+ ([\d.]+)V([\d.]+)/u.exec(code);
  return found && [Number(found[1]), Number(found[2])];
}

const length = (code: string): number => {
  const ends = parisonEnds(code);
  return ends === null ? 0 : ends[1] - ends[0];
};

const share = fc.double({ min: 0, max: 1, noNaN: true });

describe("the halves of a mold", () => {
  it("touch when the mold is closed, and only then", () => {
    const [left, right] = faces(withMold({ closed: 1 }));
    expect(left).toBe(right);
    const [apartLeft, apartRight] = faces(withMold({ closed: 0.98 }));
    expect(apartLeft).toBeLessThan(apartRight!);
  });

  it("move linearly, and each as far as the other", () => {
    const gap = (closed: number): number => {
      const [left = 0, right = 0] = faces(withMold({ closed }));
      return right - left;
    };
    const [middle] = faces(withMold({ closed: 1 }));
    fc.assert(
      fc.property(share, (closed) => {
        expect(gap(closed)).toBeCloseTo(gap(0) * (1 - closed), 1);
        const [left = 0, right = 0] = faces(withMold({ closed }));
        expect((left + right) / 2).toBeCloseTo(middle!, 1);
      }),
    );
  });
});

describe("a parison", () => {
  it("grows with the share delivered", () => {
    fc.assert(
      fc.property(share, share, (one, other) => {
        const [short, long] = [Math.min(one, other), Math.max(one, other)];
        const drawn = [short, long].map((parison) => length(withMold({ content: "parison", parison })));
        expect(drawn[0]).toBeLessThanOrEqual(drawn[1]!);
        expect(drawn[1]).toBeCloseTo(long * length(withMold({ content: "parison", parison: 1 })), 1);
      }),
    );
  });

  it("outgrows its mold only in continuous extrusion, whatever its sag", () => {
    fc.assert(
      fc.property(share, share, (parison, sag) => {
        const code = withMold({ content: "parison", parison, sag });
        expect(parisonEnds(code)?.[1] ?? 0).toBeLessThanOrEqual(heightOfHalves(code)[1] + 0.01);
      }),
    );
    const scene = sceneGallery["two molds that travel"]!;
    expect(parisonEnds(pictured(scene))![1]).toBeGreaterThan(heightOfHalves(pictured(scene))[1]);
  });

  it("is longer by its sag three times, and says so", () => {
    const plain = length(withMold({ content: "parison", parison: 1 }));
    const code = withMold({ content: "parison", parison: 1, sag: 0.02 });
    expect(length(code) / plain).toBeCloseTo(1.06, 3);
    expect(code).toContain("sag 2.0 %, drawn × 3");
    expect(withMold({ content: "parison", parison: 1, sag: 0.3 })).toContain("sag 30 %, drawn shorter");
    expect(withMold({ content: "parison", parison: 1 })).not.toContain("sag");
  });

  it("hangs once for each cavity up to three, and is counted beyond", () => {
    const tubes = (cavities: number): number =>
      pictured(builtScene({ stations: [builtStation({ cavities, mold: { content: "parison", parison: 1 } })] })).split(
        'class="tube"',
      ).length - 1;
    expect([1, 2, 3, 4, 8].map(tubes)).toEqual([1, 2, 3, 1, 1]);
    expect(pictured(builtScene({ stations: [builtStation({ cavities: 8 })] }))).toContain(">8 cavities<");
  });
});

describe("the ports of the valve", () => {
  const stateOfPorts = (code: string): readonly (readonly string[])[] =>
    [...code.matchAll(/class="port (open|blocked)" data-port="([^"]*)"/gu)].map(([, state = "", name = ""]) => [
      name,
      state,
    ]);

  it.each([1, 2, 3, 5, 6, 16])("of %d stations are blocked where the valve blocks them", (count) => {
    const stations = builtStations(count);
    for (const openTo of [null, ...stations.map(({ name }) => name)]) {
      const valve = openTo === null ? builtScene().valve : openValve(openTo);
      const ports = stateOfPorts(pictured(builtScene({ stations, valve })));
      expect(new Set(ports.map(([name]) => name))).toEqual(new Set(stations.map(({ name }) => name)));
      for (const [name, state] of ports) expect([name, state]).toEqual([name, name === openTo ? "open" : "blocked"]);
    }
  });

  it("are all blocked while the valve shifts, and the words say for which station", () => {
    const valve = { ...builtScene().valve!, state: "shifting", kind: "working" as const, shiftsFor: "left" };
    const code = pictured(builtScene({ valve }));
    expect(code).not.toContain("port open");
    expect(code).toContain("every port is blocked; it shifts for left.");
  });
});

describe("the screw", () => {
  /** Left end of the melt before the screw. */
  const tip = (melt: Parameters<typeof builtMelt>[0]): number => {
    const code = pictured(builtScene({ screw: { ...builtScene().screw, melt: builtMelt(melt) } }));
    return Number(/class="gathered"><rect x="([\d.]+)"/u.exec(code)![1]);
  };

  it("moves back by the mass gathered, to the scale of its capacity", () => {
    const stroke = tip({ share: 0 }) - tip({ share: 1, shotGrams: 400 });
    fc.assert(
      fc.property(share, fc.integer({ min: 20, max: 400 }), (gathered, shotGrams) => {
        const moved = tip({ share: 0, shotGrams }) - tip({ share: gathered, shotGrams });
        expect(moved / stroke).toBeCloseTo((gathered * shotGrams) / 400, 2);
      }),
    );
  });

  it("stands still where it gathers no shot", () => {
    const still = { ...builtScene().screw, melt: null };
    const code = pictured(builtScene({ screw: still }));
    expect(code).not.toContain("set-point");
    expect(code).not.toContain("enlarged");
  });

  it("has its shot enlarged where that is a small part of its capacity", () => {
    expect(pictured(builtScene())).toContain("shot, enlarged × 6");
    const screw = { ...builtScene().screw, melt: builtMelt({ shotGrams: 300 }) };
    expect(pictured(builtScene({ screw }))).not.toContain("enlarged");
  });

  it("has shares instead of grams where no mass is given", () => {
    const melt = { share: 0.58, grams: null, shotGrams: null, capacityGrams: null };
    const code = pictured(builtScene({ screw: { ...builtScene().screw, melt } }));
    expect(code).toContain(">melt: 58 % of the shot<");
    expect(code).not.toContain("capacity");
  });
});

describe("the clock of the cooling time", () => {
  it("is filled by the share that is over", () => {
    const code = withMold({ content: "part", closed: 1, air: "held", cooling: 0.45 });
    expect(code).toContain('stroke-dasharray="45.0 100"');
    expect(code).toContain(">cooling time 45 % over<");
    expect(withMold({ closed: 1 })).not.toContain("clock");
  });
});

describe("the facts of a picture", () => {
  it.each(Object.entries(sceneGallery))(
    "of %s are one sentence a resource, in the list and the description",
    (_, scene) => {
      const code = pictured(scene);
      const facts = [...code.matchAll(/<li[^>]*>([^<]*)<\/li>/gu)].map(([, text = ""]) => text);
      const { rams, valve, stations, masks, operators, servers } = scene;
      const others = [rams, stations, masks, operators, servers].reduce((sum, list) => sum + list.length, 0);
      expect(facts).toHaveLength(1 + (valve ? 1 : 0) + others);
      expect(facts.every((fact) => /^[^.]+: .+\.$/u.test(fact))).toBe(true);
      expect(/<desc[^>]*>([^<]*)</u.exec(code)![1]).toBe(facts.join(" "));
    },
  );

  it("name the hottest point only where it is known, and the cause of a wait", () => {
    const code = pictured(sceneGallery["five stations"]!);
    expect(code).toContain("station 5: cooling; mold halves closed; 45 % of the cooling time over; blow air is held");
    expect(code.match(/hottest point/gu)).toHaveLength(2);
    expect(code).toContain("station 1: awaiting melt (the shot is not full yet); mold halves apart;");
  });
});

describe("a picture", () => {
  const hostile = `<script>alert("evil")</script>&'`;

  it("shows hostile names as text", () => {
    const stations = [builtStation({ name: hostile, state: hostile, cause: hostile })];
    const servers = [{ name: hostile, places: [], before: 0, room: null, passed: 0 }];
    const code = pictured(builtScene({ stations, servers, valve: openValve(hostile) }), { chosen: hostile });
    expect(code).not.toContain("<script");
    expect(code).not.toContain(`"evil"`);
    expect(code).toContain("&lt;script&gt;alert(&quot;evil&quot;)&lt;/script&gt;&amp;&#39;: ");
  });

  it.each(Object.entries(sceneGallery))(
    "of %s has no style attribute, script, link or number that is none",
    (_, scene) => {
      for (const width of ["wide", "phone"] as const) {
        const code = pictured(scene, { width });
        expect(code).not.toMatch(/ style=| on\w+=|href|NaN|undefined|null|Infinity/u);
      }
    },
  );

  it.each(Object.entries(sceneGallery))("of %s has the same elements with an id at every moment", (_, scene) => {
    const ids = (code: string): readonly string[] => [...code.matchAll(/ id="([^"]*)"/gu)].map(([, id = ""]) => id);
    const later: Scene = {
      ...scene,
      seconds: 99,
      stations: builtStations(scene.stations.length, 5).map((station, i) => {
        const { name, mold } = scene.stations[i]!;
        return { ...station, name, mold: { ...station.mold, travel: mold.travel } };
      }),
    };
    expect(ids(pictured(later))).toEqual(ids(pictured(scene)));
    expect(new Set(ids(pictured(scene))).size).toBe(ids(pictured(scene)).length);
  });

  it.each(Object.entries(sceneGallery))("of %s keeps its size while its states change", (_, scene) => {
    const size = (shown: Scene): string => /viewBox="([^"]*)"/u.exec(pictured(shown))![1]!;
    const stations = scene.stations.map((station) => ({
      ...station,
      ...builtStation({ name: station.name, mold: { travel: station.mold.travel, closed: 1 } }),
    }));
    const operators = scene.operators.map((operator) => ({ ...operator, at: null, walksTo: null }));
    expect(size({ ...scene, stations, operators })).toBe(size(scene));
  });

  it("frames the chosen resource only, and every resource can be chosen", () => {
    const scene = sceneGallery["three heads"]!;
    const names = [...pictured(scene).matchAll(/data-resource="([^"]*)"/gu)].map(([, name = ""]) => name);
    expect(names).toHaveLength(1 + 1 + 3 + 3 + 3 + 2);
    for (const chosen of names) {
      const code = pictured(scene, { chosen });
      expect(code.split('class="chosen"')).toHaveLength(2);
      expect(code).toMatch(/<li aria-current="true">/u);
    }
  });

  it("of a phone has the chosen mold only, else the one that the chosen resource serves", () => {
    const scene = sceneGallery["three heads"]!;
    const shown = (chosen: string): readonly string[] =>
      [...pictured(scene, { chosen, width: "phone" }).matchAll(/id="p-(station-\d)"/gu)].map(([, id = ""]) => id);
    expect(shown("station 3")).toEqual(["station-3"]);
    expect(pictured(scene, { chosen: "station 3", width: "phone" })).toContain(">station 3 of 3, 2 cavities<");
    expect(shown("ram of station 2")).toEqual(["station-2"]);
    expect(shown("operator 1")).toEqual(["station-1"]);
    expect(shown("plasticator")).toEqual(["station-1"]);
  });

  it("never says that a mold may be opened", () => {
    for (const scene of Object.values(sceneGallery)) {
      expect(pictured(scene)).toContain("No safety information: gates, interlocks and lockout stay in use.");
      expect(pictured(scene)).not.toMatch(/safe to|may be opened|\bsafe\b/u);
    }
    expect(pictureStyle).not.toMatch(/url\(|@import|expression/u);
  });
});
