// The floor of `make`: node's start, reading the same input and writing the same bytes with the same libraries, nothing else.
// Reading goes to the numbers of the paths, and what holds paths is written from its numbers, which lie ready (`floor-ready.ts`);
// without those, it copies text: no job that reads a number can come near it. Pictures are drawn anew from their drawings; pages are only copied, so a ratio with them is rather
// too high.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import { encode } from 'fast-png';
import { Blob, Face, Font } from 'harfbuzzjs';
import { SaxesParser } from 'saxes';
import 'clipper2-ts';
import 'commander';
import 'flatbush';
import 'svgpath';

const [jobFile, finished, out, ready] = process.argv.slice(2);
const find = createRequire(import.meta.url).resolve;
await initWasm(readFileSync(find('@resvg/resvg-wasm/index_bg.wasm')));
const font = readFileSync(find('@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf'));
new Font(new Face(new Blob(font.buffer.slice(font.byteOffset, font.byteOffset + font.length)), 0));
const job = JSON.parse(readFileSync(jobFile, 'utf8'));
JSON.parse(readFileSync(join(dirname(jobFile), job.blank), 'utf8'));
const plain = new Resvg(readFileSync(join(dirname(jobFile), job.artwork.file), 'utf8')).toString();
const paths = [];
const parser = new SaxesParser();
parser.on('opentag', ({ name, attributes }) => {
  if (ready && name === 'path') paths.push(numbersOf(attributes.d));
});
parser.write(plain).close();
mkdirSync(out, { recursive: true });
for (const file of readdirSync(finished)) {
  const svg = join(finished, file.replace(/png$/, 'svg'));
  const isDrawn = file.endsWith('.png') && existsSync(svg);
  writeFileSync(join(out, file), isDrawn ? drawn(svg) : contentOf(file));
}

/** The numbers of path data, however it is written. */
function numbersOf(data) {
  return Float64Array.from(data.match(/-?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi) ?? [], Number);
}

/** A file: its text put together from the numbers of its paths, where those lie ready. */
function contentOf(file) {
  const text = ready && join(ready, `${file}.text`);
  if (!text || !existsSync(text)) return readFileSync(join(finished, file));
  const bytes = readFileSync(join(ready, `${file}.numbers`));
  const numbers = new Float64Array(bytes.buffer, bytes.byteOffset, bytes.byteLength / 8);
  let next = 0;
  // Line by line, for which less garbage is made.
  const lines = readFileSync(text, 'utf8').split('\n');
  return lines
    .map((line) => {
      const [start, ...rest] = line.split('\u0001');
      let written = start;
      for (const part of rest) written += numbers[next++] + part;
      return written;
    })
    .join('\n');
}

/** A picture drawn anew on white, as wide as ours are, and packed. */
function drawn(svg) {
  const engine = new Resvg(readFileSync(svg, 'utf8'), { fitTo: { mode: 'width', value: 1600 } });
  const { width, height, pixels } = engine.render();
  const data = new Uint8Array(width * height * 3);
  for (let i = 0, to = 0; i < pixels.length; i += 4) {
    const clear = 255 - pixels[i + 3];
    for (let k = 0; k < 3; k++) data[to++] = pixels[i + k] + clear;
  }
  return encode({ width, height, channels: 3, depth: 8, data }, { zlib: { level: 4 } });
}
