/** The look of the worked examples, on a screen and on A4. */
export const EXAMPLES_STYLE = `
:root { color-scheme: light dark; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 54rem; padding: 1rem; color: CanvasText; background: Canvas;
  font: 14px/1.35 system-ui, sans-serif; overflow-wrap: anywhere; }
h1 { font-size: 1.5em; margin: 0 0 .3em; }
h2 { font-size: 1.1em; margin: 0 0 .3em; }
p { margin: .3em 0; }
.part { border-top: 2px solid; padding: .5em 0 .8em; margin-top: .6em; }
.beside { display: grid; grid-template-columns: minmax(0, 17em) minmax(0, 1fr); gap: .4em 1.6em; align-items: start; }
figure { margin: 0; }
figcaption { flex-basis: 100%; font-size: .9em; }
.places { display: flex; flex-wrap: wrap; gap: 4px 12px; align-items: flex-end; }
.stage-drawing { max-width: 100%; height: auto; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: .15em .6em .15em 0; font-weight: 400;
  border-bottom: 1px solid GrayText; }
thead th { font-weight: 600; border-bottom: 2px solid; }
.number { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
.working { font-size: .9em; }
.working td:nth-child(3):not(.number) { min-width: 9em; }
.working td:nth-child(2) { min-width: 11em; }
.working td:nth-child(4), .working th { white-space: nowrap; }
table { overflow-wrap: break-word; }
.wide { overflow-x: auto; }
.write { display: inline-block; width: 8em; height: 1.4em; border-bottom: 1px solid; }
summary { cursor: pointer; padding: .3em 0; font-weight: 600; }
.caution { border: 2px solid; padding: .3em .6em; }
@media screen and (max-width: 720px) {
  .working, .working tbody, .working tr, .working td { display: block; width: auto; }
  .working thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  .working tr { padding: .3em 0; border-bottom: 1px solid GrayText; }
  .working td { border: 0; padding: 0; text-align: left; }
  .working td:first-child { font-weight: 600; }
  .working td:nth-child(3), .working td:nth-child(4) { display: inline; }
  .working td:nth-child(4)::before { content: ' '; }
  .working td:empty { display: none; }
}
@media screen and (max-width: 560px) { .beside { grid-template-columns: minmax(0, 1fr); } }
@page { size: A4 portrait; margin: 12mm; }
@media print {
  :root { color-scheme: light; }
  body { max-width: none; padding: 0; font-size: 9pt; }
  .part { break-inside: avoid; }
  details:not([open]) { display: none; }
  .wide { overflow: visible; }
}
`;
