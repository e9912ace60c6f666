import {fork} from 'node:child_process'; import {readdirSync,rmSync} from 'node:fs';
const out='/tmp/w/reached.jsonl'; rmSync(out,{force:true});
const c=fork(new URL('session.mjs',import.meta.url),{stdio:['ignore','inherit','inherit','ipc'],env:{...process.env,CASE_COUNT:'5',REACHED_FUNCTIONS:out}});
await new Promise(r=>c.once('message',r));
const skip=/^tests\/unit\/(cli|page|foundation|support)\//;
const dirs=['unit','theory'].flatMap(d=>readdirSync('tests/'+d,{recursive:true}).map(f=>`tests/${d}/${f}`)).filter(f=>f.endsWith('.test.ts')&&!f.endsWith('.long.test.ts')&&!skip.test(f));
console.log(dirs.length);
c.send({files:dirs,limit:1e9}); c.once('message',m=>{console.log(JSON.stringify(m).slice(0,6000)); c.disconnect();});
