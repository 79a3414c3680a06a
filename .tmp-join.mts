import { PNG } from 'pngjs'; import { readFileSync, writeFileSync } from 'node:fs';
const [out, ...files] = process.argv.slice(2);
const ps = files.map((f) => PNG.sync.read(readFileSync(f)));
const o = new PNG({ width: ps.reduce((s, p) => s + p.width + 10, 0), height: Math.max(...ps.map((p) => p.height)) });
o.data.fill(120); let x = 0; for (const p of ps) { PNG.bitblt(p, o, 0, 0, p.width, p.height, x, 0); x += p.width + 10; }
writeFileSync(out!, PNG.sync.write(o));
