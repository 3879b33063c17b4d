/** The look of the crew's sheets: each survey on an A4 page of its own; in grey as on a screen. */
export const CREW_SHEET_STYLE = `
:root { color-scheme: light dark; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 50rem; padding: 1rem; color: CanvasText; background: Canvas;
  font: 14px/1.35 system-ui, sans-serif; }
h1 { font-size: 1.5em; margin: 0; }
h2 { font-size: 1.25em; margin: 0; }
h3 { font-size: 1em; margin: .6em 0 .2em; }
p { margin: .2em 0; }
ul { margin: 0; padding-left: 1.1em; }
.sheet { border-top: 3px solid; padding: .6em 0 1.4em; margin-top: 1em; }
.where { font-size: 1.1em; font-weight: 600; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: .15em .5em .15em 0; border-bottom: 1px solid GrayText; font-weight: 400; }
thead th, caption { font-weight: 600; }
thead th { border-bottom: 2px solid; }
caption { text-align: left; padding: .5em 0 .1em; }
.number { text-align: right; font-variant-numeric: tabular-nums; }
.pieces { columns: 20rem; font-size: .9em; }
.moves { font-size: .85em; min-width: 44rem; }
.moves th:nth-child(3) { width: 33%; }
.wide { overflow-x: auto; }
.strip { list-style: none; margin: 0; padding: 0; display: flex; flex-wrap: wrap; gap: 4px; }
.strip li { width: 98px; padding: 2px; border: 1px solid GrayText; font-size: 11px; line-height: 1.25; display: flex;
  flex-direction: column; justify-content: space-between; }
.strip .marked { border: 3px solid; padding: 0; }
.stage-drawing { max-width: 100%; height: auto; }
.tight { display: flex; flex-wrap: wrap; gap: .4em 1.6em; }
.tight figure { margin: .4em 0 0; flex: 0 1 auto; min-width: 0; max-width: 100%; }
.tight .two { flex: 1 1 18rem; align-content: start; }
.places { display: flex; flex-wrap: wrap; gap: 4px 8px; align-items: flex-end; }
figcaption { font-weight: 600; }
.two { display: grid; grid-template-columns: 1fr 1fr; gap: 1em; font-size: .9em; }
.caution { border: 2px solid; padding: .3em .6em; margin-top: .6em; font-size: .86em; }
@media screen and (max-width: 760px) {
  .moves { min-width: 0; }
  .moves, .moves tbody, .moves tr, .moves th, .moves td, .moves caption { display: block; width: auto; }
  .moves thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  .moves tr { padding: .3em 0; border-bottom: 1px solid GrayText; }
  .moves tbody th, .moves td { border: 0; padding: 0 .8em 0 0; text-align: left; }
  .moves tbody th:nth-child(3) { font-weight: 600; width: auto; }
  .moves td { display: inline-block; }
  .moves td[data-head]::before { content: attr(data-head) ' '; opacity: .8; }
}
@media screen and (max-width: 560px) { .two { grid-template-columns: 1fr; } }
/* The table is wider than a narrow screen; what stands over it stays in sight while it is moved aside. */
@media screen and (max-width: 560px) { caption span { display: block; position: sticky; left: 0; max-width: calc(100vw - 2.5rem); } }
@page { size: A4 portrait; margin: 8mm; }
@media print {
  :root { color-scheme: light; }
  body { max-width: none; padding: 0; font-size: 8.5pt; }
  h1, .remark { display: none; }
  .sheet { break-before: page; border: 0; padding: 0; margin: 0; }
  .sheet:first-of-type { break-before: auto; }
  .wide { overflow: visible; }
  .moves { min-width: 0; font-size: 7pt; line-height: 1.2; }
  .moves th, .moves td { padding-top: .05em; padding-bottom: .05em; }
  .moves th:nth-child(3) { width: 38%; }
  .moves th:nth-child(7) { width: 18%; }
  .moves th:nth-child(9) { width: 21%; }
  h3, caption { margin: .2em 0 0; padding: .2em 0 0; }
  .strip li { width: 76px; font-size: 7pt; }
  .strip svg { height: 44px; }
  .tight { gap: .1em 1.6em; }
  .tight figure { margin-top: .1em; }
  .places svg { zoom: .85; }
  .caution, .two, .pieces { font-size: 7pt; line-height: 1.2; }
  .caution { margin-top: .3em; padding: .15em .6em; }
  tr, figure, .two, .caution, .strip li { break-inside: avoid; }
}
`;
