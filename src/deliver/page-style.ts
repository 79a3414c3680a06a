// How pages of words, tables and pictures look, on a screen and when a browser prints them.

/** Quiet, and the same on paper: nothing but rules, weights and one warm tone for cautions, which have a word too. */
export const pageStyle = `
:root { color-scheme: light; --ink: #1c1c1c; --quiet: #5a6167; --rule: #c4c7c9; --caution: #b3541e; }
* { box-sizing: border-box; }
body { font: 11pt/1.45 "Atkinson Hyperlegible", system-ui, sans-serif; color: var(--ink); background: #eeedea; margin: 0; }
main { background: #fff; max-width: 60rem; margin: 0 auto; padding: 2.5rem 3rem 4rem; min-height: 100vh; }
h1 { font-size: 2rem; line-height: 1.15; margin: 0 0 .4rem; }
h2 { font-size: 1.2rem; line-height: 1.2; margin: 2.2rem 0 .7rem; border-bottom: 2px solid var(--ink); padding-bottom: .25rem; }
p { margin: .5rem 0; max-width: 46rem; }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; font-size: .94em; }
th, td { text-align: left; padding: .38rem .9rem .38rem 0; border-bottom: 1px solid var(--rule); vertical-align: top; }
th { font-weight: 700; border-bottom: 1.5px solid var(--ink); }
td.tick { width: 1.8rem; } td.tick::before { content: ""; display: inline-block; width: .85rem; height: .85rem; border: 1.5px solid var(--ink); vertical-align: -.1rem; }
dl.facts { display: grid; grid-template-columns: repeat(3, 1fr); margin: 1.2rem 0 0; border-top: 3px solid var(--ink); column-gap: 1.2rem; }
dl.facts div { padding: .35rem 0 .4rem; border-bottom: 1px solid var(--rule); } dl.facts div:empty { border: 0; }
dl.facts dt { font-size: .8rem; color: var(--quiet); } dl.facts dd { margin: 0; font-weight: 700; } dl.facts dd.write { height: 1.6rem; border-bottom: 1.5px solid var(--ink); }
figure { margin: .5rem 0 1rem; } figure img { display: block; max-width: 100%; max-height: 22cm; height: auto; } figcaption { color: var(--quiet); font-size: .9em; margin-top: .3rem; overflow-wrap: anywhere; }
.pictures { display: grid; grid-template-columns: repeat(2, 1fr); gap: 1rem 1.4rem; align-items: end; } .pictures figure { margin: 0; } .pictures img { width: 100%; max-height: 10cm; object-fit: contain; object-position: left bottom; }
ul, ol { padding-left: 1.3rem; margin: .4rem 0; } li { margin: .2rem 0; }
ul.ticks { list-style: none; padding-left: 0; } ul.ticks li { padding-left: 1.8rem; position: relative; margin: .4rem 0; }
ul.ticks li::before { content: ""; position: absolute; left: .1rem; top: .25rem; width: .85rem; height: .85rem; border: 1.5px solid var(--ink); }
.caution { border: 1px solid var(--caution); border-left-width: 7px; padding: .6rem 1rem; margin: .6rem 0; }
.timeline { width: 100%; height: auto; margin-top: .8rem; }
@media (max-width: 40rem) { main { padding: 1.2rem 1rem 3rem; } dl.facts { grid-template-columns: 1fr 1fr; } .pictures { grid-template-columns: 1fr; } }
@page { margin: 15mm; }
@media print { body { background: #fff; font-size: 9.5pt; } main { max-width: none; padding: 0; min-height: 0; } h1 { font-size: 20pt; } h2 { break-after: avoid; } tr, figure, .caution, dl.facts, ul.ticks li, .timeline { break-inside: avoid; } .pictures img { max-height: 7cm; } a { color: inherit; text-decoration: none; } }
`;
