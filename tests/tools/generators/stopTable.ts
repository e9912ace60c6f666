// Makes the matrix of stops from the data of the simulation.
import { stopMatrix, stopWords, type ShotPlace } from "#cell/layers/stopMatrix.ts";
import { withReadmeTable } from "./readmeTable.ts";

const fateWords = { "run on": "runs on", hold: "is held, goes on after the stop", lost: "its shot is lost" } as const;

export function withStopTable(readme: string): string {
  const rows = (Object.keys(stopMatrix) as ShotPlace[]).map((place) => {
    const { finish, hold, scrap } = stopMatrix[place];
    const { steps, neighbors } = stopWords[place];
    return [`${place}: ${steps}`, fateWords[finish], fateWords[hold], fateWords[scrap], neighbors];
  });
  const headings = ["the shot, and the step under way", "`finish`", "`hold`", "`scrap`", "what the neighbors do"];
  return withReadmeTable(readme, "stops", [headings, ...rows]);
}
