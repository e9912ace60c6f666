// Opens the compressed parts of the page: the program becomes a worker and a script, which get what the command gave.
import type * as Program from "./program.ts";

/** What the script defines as soon as it is in the page. */
declare const blowcell: typeof Program;

async function opened(id: string): Promise<string> {
  const packed = atob(document.getElementById(id)!.textContent);
  const bytes = Uint8Array.from(packed, (letter) => letter.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(stream).text();
}

async function open(): Promise<void> {
  const code = await opened("program");
  const worker = new Worker(URL.createObjectURL(new Blob([code], { type: "text/javascript" })));
  const script = document.createElement("script");
  script.textContent = code;
  document.head.append(script);
  blowcell.start(worker, JSON.parse(document.getElementById("given")!.textContent), (part) => opened(part));
}

open().catch((error: unknown) => {
  const words = document.createElement("p");
  words.className = "finding";
  words.textContent = `This browser cannot open the page (${String(error)}). Use one of 2023 or later.`;
  document.getElementById("page")!.append(words);
});
