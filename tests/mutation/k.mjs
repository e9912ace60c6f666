import { readReach } from "./choice.mjs"; import { testFiles } from "./sources.mjs"; import fs from 'node:fs';
const r=readReach("node_modules/.cache/blowcell/reach.jsonl"); const known=new Map(); for (const t of r.tests) known.set(t.file,(known.get(t.file)??0)+Math.min(t.time,99));
const d='/tmp/'+fs.readdirSync('/tmp').find(x=>x.startsWith('blowcell-mutants')); const done=new Set(); for (const f of fs.readdirSync(d).filter(x=>x.startsWith('notes'))) for (const l of fs.readFileSync(d+'/'+f,'utf8').split('\n')) { if(!l) continue; const x=JSON.parse(l); if(x.what==='file') done.add(x.by);} 
console.log(done.size); for (const f of testFiles()) if(!done.has(f)) console.log(f, known.get(f)?.toFixed(1));
