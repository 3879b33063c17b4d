/**
 * The look of the month's page, on a screen and on A4. Light and dark come from the browser's own pair of colours,
 * which the drawings use too; paper is always light.
 */
export const MONTH_PAGE_STYLE = `
:root { color-scheme: light dark; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 66rem; padding: 1.2rem; overflow-wrap: anywhere; color: CanvasText; background: Canvas;
  font: 15px/1.4 system-ui, sans-serif; }
h1 { font-size: 1.6em; line-height: 1.2; margin: 0 0 .2em; }
h2 { font-size: 1.2em; margin: 1.6em 0 .4em; }
h3 { font-size: 1.05em; margin: 0 0 .3em; display: flex; flex-wrap: wrap; gap: .2em .9em; }
p { margin: .3em 0; }
.small { font-size: .86em; }
.cautions { border: 2px solid; padding: .5em .8em; margin: .8em 0; }
.cautions ul { margin: .2em 0 0; padding-left: 1.2em; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: .25em .5em .25em 0; border-bottom: 1px solid GrayText; }
thead th { border-bottom: 2px solid; }
tfoot td { border: 0; font-size: .86em; padding-top: .5em; }
.number { text-align: right; white-space: nowrap; padding-right: .9em; font-variant-numeric: tabular-nums; }
.name { min-width: 4.5em; }
.verdict { font-weight: 600; }
.sign { vertical-align: -.08em; }
a { color: inherit; }
.counts { width: auto; }
.wide { overflow-x: auto; }
.line th:nth-child(3) { width: 12%; }
.line th:nth-child(5) { width: 24%; }
.line th:nth-child(6) { width: 36%; }
.look { margin: .2em 0 0; padding-left: 1.1em; font-weight: 600; }
dd .look { margin: 0; }
.survey { border-top: 2px solid; padding: .7em 0 .9em; }
.beside { display: grid; grid-template-columns: 290px minmax(0, 1fr); gap: .4em 1.4em; }
.beside figure { margin: 0; }
.stage-drawing { max-width: 100%; height: auto; }
dl { margin: 0; display: grid; grid-template-columns: max-content minmax(0, 1fr); gap: .15em .8em; }
dt { font-weight: 600; }
dd { margin: 0; overflow-wrap: anywhere; }
.again { margin-top: .6em; font-size: .9em; }
.again th, .again td { padding-right: .8em; }
caption { text-align: left; font-weight: 600; padding: .2em 0; }
.tasks { columns: 2; column-gap: 2rem; }
.task { break-inside: auto; margin: 0 0 .9em; }
.task h3 { margin: 0; break-after: avoid; border-bottom: 2px solid; }
.task h3 .number { padding: 0; font-weight: 400; }
.task ul { margin: .2em 0 0; padding-left: 1.1em; }
.task li { break-inside: avoid; overflow-wrap: anywhere; }
.who { font-style: italic; }
.line td, .again td, .counts td { overflow-wrap: anywhere; }
:target { outline: 3px solid; outline-offset: 2px; }
@media screen and (max-width: 720px) {
  .tasks { columns: 1; }
  .counts th, .counts td { padding-top: .1em; padding-bottom: .1em; }
  .counts td:nth-child(3) { font-size: .8em; line-height: 1.25; }
  .beside { grid-template-columns: minmax(0, 1fr); }
  .line table, .line tbody, .line tr, .line th, .line td,
  .again, .again tbody, .again tr, .again td, .again caption { display: block; width: auto; }
  .line thead, .again thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  .line tr, .again tr { padding: .4em 0; border-bottom: 2px solid GrayText; }
  .line th, .line td, .again td { border: 0; padding: .1em 0; text-align: left; }
  [data-head]::before { content: attr(data-head) ': '; font-weight: 600; }
  .verdict { white-space: normal; }
  dl { grid-template-columns: minmax(0, 1fr); }
  dd { padding-left: .8em; }
}
@page { size: A4 portrait; margin: 13mm 12mm; }
@media print {
  :root { color-scheme: light; }
  body { max-width: none; padding: 0; font-size: 9pt; line-height: 1.3; }
  a { text-decoration: none; }
  .wide { overflow: visible; }
  h2, h3, caption, thead { break-after: avoid; }
  th, td { padding-top: .15em; padding-bottom: .15em; }
  tr, figure, .beside, .again, .cautions { break-inside: avoid; }
  .beside { grid-template-columns: 270px minmax(0, 1fr); }
}
`;
