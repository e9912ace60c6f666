// Opens the compressed parts of the page: starts the worker, then the script, which share what the command gave.
import type * as Start from "./start.ts";

/** What the script defines as soon as it is in the page. */
declare const blowcell: typeof Start;

async function opened(id: string): Promise<string> {
  const packed = atob(document.getElementById(id)!.textContent);
  const bytes = Uint8Array.from(packed, (letter) => letter.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(stream).text();
}

async function openWorker(): Promise<Worker> {
  const place = URL.createObjectURL(new Blob([await opened("worker")], { type: "text/javascript" }));
  return new Worker(place);
}

async function open(): Promise<void> {
  const [worker, code] = await Promise.all([openWorker(), opened("start")]);
  const script = document.createElement("script");
  script.textContent = code;
  document.head.append(script);
  blowcell.start(worker, JSON.parse(document.getElementById("given")!.textContent), () => opened("licenses"));
}

open().catch((error: unknown) => {
  const words = document.createElement("p");
  words.className = "finding";
  words.textContent = `This browser cannot open the page (${String(error)}). Use one of 2023 or later.`;
  document.getElementById("page")!.append(words);
});
