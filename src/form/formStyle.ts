/** The look of the form, on a screen and on A4. */
export const FORM_STYLE = `
:root { color-scheme: light dark; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 50rem; padding: 1rem; color: CanvasText; background: Canvas;
  font: 14px/1.35 system-ui, sans-serif; }
h1 { font-size: 1.5em; margin: 0 0 .3em; }
h2 { font-size: 1.1em; margin: 0 0 .3em; }
p { margin: .3em 0; }
.part { border-top: 2px solid; padding: .5em 0 .8em; }
.beside { display: grid; grid-template-columns: 250px minmax(0, 1fr); gap: .4em 1.2em; }
figure { margin: 0; }
.stage-drawing { max-width: 100%; height: auto; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: bottom; padding: .3em .5em .1em 0; font-weight: 400; }
thead th { font-weight: 600; border-bottom: 1px solid; }
.letter { font-weight: 600; width: 1.6em; }
td:last-child { white-space: nowrap; width: 9em; }
.write { display: inline-block; width: 5.5em; height: 1.3em; border-bottom: 1px solid; }
.write.long { width: 22em; max-width: 100%; }
.write.short { width: 3em; }
.photos { font-weight: 600; margin: .5em 0 .1em; }
.ticks { list-style: none; margin: 0; padding: 0; display: flex; flex-wrap: wrap; gap: .2em 1.2em; }
.tick { display: inline-block; width: .9em; height: .9em; border: 1px solid; vertical-align: -.1em; }
.caution { border: 2px solid; padding: .3em .6em; }
@media screen and (max-width: 560px) { .beside { grid-template-columns: minmax(0, 1fr); } td:last-child { width: 7em; } }
@page { size: A4 portrait; margin: 12mm; }
@media print {
  :root { color-scheme: light; }
  body { max-width: none; padding: 0; font-size: 9pt; }
  .part { break-inside: avoid; }
}
`;
