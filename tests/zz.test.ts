import { test } from 'vitest';
import { filledShapes, clippedShapes } from '/work/main/src/geometry/regions.ts';
import { cubic, polygon, type Contour } from '/work/main/src/geometry/contour.ts';
import { shapeArea } from '/work/main/src/geometry/measure.ts';
const K=0.5522847498;
const circle=(x:number,y:number,r:number):Contour=>{const p=(a:number,b:number)=>({x:x+a*r,y:y+b*r});return {closed:true,segments:[cubic(p(1,0),p(1,K),p(K,1),p(0,1)),cubic(p(0,1),p(-K,1),p(-1,K),p(-1,0)),cubic(p(-1,0),p(-1,-K),p(-K,-1),p(0,-1)),cubic(p(0,-1),p(K,-1),p(1,-K),p(1,0))]}};
test('x',()=>{
  const s=filledShapes([circle(0,0,10),circle(12,0,10),circle(0,0,4)],'nonzero',0.001);
  console.log(JSON.stringify(s.map(x=>x.contours.map(c=>c.segments.map(g=>[g.kind,g.from.x.toFixed(6),g.from.y.toFixed(6)].join(' '))))),s.map(shapeArea));
  // lens area
  const d=12,r=10; const lens=2*r*r*Math.acos(d/2/r)-d/2*Math.sqrt(4*r*r-d*d);
  console.log(2*Math.PI*100-lens);
  const e=filledShapes([circle(0,0,10),circle(0,0,4)],'evenodd',0.001); console.log(e.length,e[0]!.contours.length, e.map(shapeArea), Math.PI*84);
  const c=clippedShapes(e,[{contours:[polygon([{x:0,y:-20},{x:20,y:-20},{x:20,y:20},{x:0,y:20}])]}],'intersection',0.001);
  console.log(c.map(x=>x.contours.map(c=>c.segments.map(g=>[g.kind,g.from.x,g.from.y].join(' ')))),c.map(shapeArea));
});
