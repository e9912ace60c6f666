import { Runner } from "./runner.mjs"; import { readSource } from "./sources.mjs";
const r=new Runner({CASE_COUNT:"10"});
const go=async(file,from,to,files,pattern)=>{const t=readSource(file); const said=await r.ask({files,pattern,changed:from?{file,text:t.replace(from,to)}:undefined,limit:100}); console.log(from,'->',to,JSON.stringify(said?.failed),said?.errors,said?.time);};

await go('src/cell/table/crew.ts','','',['tests/theory/parts/crew.test.ts'],'not named last');
await go('src/cell/table/crew.ts','place === -1 ?','false ?',['tests/theory/parts/crew.test.ts'],'not named last');
r.close();
