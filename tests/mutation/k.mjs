import { mutantsOfRoom, sampled, readSource } from "./sources.mjs";
const [room,count]=process.argv.slice(2);
for (const m of sampled(mutantsOfRoom(room),+count,`1 ${room}`)) console.log(`${m.inside<0?'S ':'  '}${m.file}:${m.line} ${m.kind} ${readSource(m.file).slice(m.start,m.end).replaceAll(/\s+/g,' ').slice(0,80)} -> ${m.to.slice(0,40)}`);
