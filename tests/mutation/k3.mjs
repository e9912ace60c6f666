import { Runner } from "./runner.mjs"; import { readSource } from "./sources.mjs";
const r=new Runner({CASE_COUNT:"10"});
const go=async(file,from,to,files,pattern)=>{const t=readSource(file); const said=await r.ask({files,pattern,changed:from?{file,text:t.replaceAll(from,to)}:undefined,limit:100}); console.log(from,'->',to,JSON.stringify(said?.failed),said?.errors,said?.time);};
const T=['tests/unit/physics/processWindow.test.ts'];
await go('src/physics/window/shotCooling.ts','','',T,'touches the mold');
await go('src/physics/window/shotCooling.ts','knows(input, fillKeys) ?','false ?',T,'touches the mold');
r.close();
