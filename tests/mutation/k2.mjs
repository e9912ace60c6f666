import { Runner } from "./runner.mjs"; import { readSource, mutantsOfRoom, sampled } from "./sources.mjs"; import {mutated} from './mutants.mjs'; import fs from 'node:fs';
const r=new Runner({CASE_COUNT:"5"});
const k=new Set(fs.readFileSync('/tmp/w/mut/quick.jsonl','utf8').split('\n').filter(Boolean).map(l=>{const x=JSON.parse(l);return [x.file,x.start,x.to].join()}));
const ms=sampled(mutantsOfRoom('cell'),60,'1 cell').filter(m=>m.inside>=0&&!k.has([m.file,m.start,m.to].join())&&/withCalendar|crew.ts|planCell|accumul|recipro/.test(m.file));
for (const m of ms) { const said=await r.ask({files:['tests/theory/stops/calendarOfTheCell.test.ts','tests/theory/parts/crew.test.ts','tests/theory/cycle/otherDeliveriesAgainstRecursion.test.ts'],changed:{file:m.file,text:mutated(readSource(m.file),m)},limit:60}); console.log(m.file,m.line,m.kind,m.to.slice(0,20),JSON.stringify(said?.failed).slice(0,200),said?.isStopped,said?.errors,said?.time); }
r.close();
