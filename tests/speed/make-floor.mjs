// The floor of `make`: node's start, reading the same input and writing the same bytes with the same libraries, nothing else.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
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
for (const file of ['wrap.cut.svg', 'wrap.guide.svg', 'job.json', 'blank.json', 'report.json'])
  writeFileSync(join(out, file), readFileSync(join(finished, file)));
