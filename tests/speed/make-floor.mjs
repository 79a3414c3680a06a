// The floor of `make`: node's start, reading the same input and writing the same bytes with the same libraries, nothing else.
// Pictures are drawn anew from their drawings; pages are only copied, so a ratio with them is rather too high.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import { Blob, Face, Font } from 'harfbuzzjs';
import { SaxesParser } from 'saxes';
import 'clipper2-ts';
import 'commander';
import 'flatbush';
import 'svgpath';

const [jobFile, finished, out] = process.argv.slice(2);
const find = createRequire(import.meta.url).resolve;
await initWasm(readFileSync(find('@resvg/resvg-wasm/index_bg.wasm')));
const font = readFileSync(find('@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf'));
new Font(new Face(new Blob(font.buffer.slice(font.byteOffset, font.byteOffset + font.length)), 0));
const job = JSON.parse(readFileSync(jobFile, 'utf8'));
JSON.parse(readFileSync(join(dirname(jobFile), job.blank), 'utf8'));
const plain = new Resvg(readFileSync(join(dirname(jobFile), job.artwork.file), 'utf8')).toString();
new SaxesParser().write(plain).close();
mkdirSync(out, { recursive: true });
for (const file of readdirSync(finished)) {
  const svg = join(finished, file.replace(/png$/, 'svg'));
  const isDrawn = file.endsWith('.png') && existsSync(svg);
  writeFileSync(join(out, file), isDrawn ? drawn(svg) : readFileSync(join(finished, file)));
}

/** A picture drawn anew, as wide as ours are. */
function drawn(svg) {
  return new Resvg(readFileSync(svg, 'utf8'), { fitTo: { mode: 'width', value: 1600 } }).render().asPng();
}
