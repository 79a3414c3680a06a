import { PDFiumLibrary } from '@hyzyla/pdfium';
import { PNG } from 'pngjs';
import { readFileSync, writeFileSync } from 'node:fs';
const lib = await PDFiumLibrary.init();
const [file, out, scale] = process.argv.slice(2);
const doc = await lib.loadDocument(readFileSync(file));
let i = 0;
for (const page of doc.pages()) {
  const r = await page.render({ scale: Number(scale ?? 2), render: async (o: any) => { const png = new PNG({ width: o.width, height: o.height }); for (let k = 0; k < o.data.length; k += 4) { png.data[k] = o.data[k]; png.data[k + 1] = o.data[k + 1]; png.data[k + 2] = o.data[k + 2]; png.data[k + 3] = 255; } return PNG.sync.write(png); } });
  writeFileSync(`${out}-${++i}.png`, r.data);
  console.log(r.width, r.height);
}
