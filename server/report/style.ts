/** Both pages: a letter in black on white, one A4 sheet. Fonts of the system only. */
export const paperStyle = `
@page { size: A4; margin: 15mm 17mm 13mm; }
* { box-sizing: border-box; }
html { background: #fff; color: #000; font: 10.4pt/1.42 Charter, 'Bitstream Charter', 'Source Serif 4', Cambria, Georgia, 'Liberation Serif', serif; font-variant-numeric: lining-nums tabular-nums; }
body { margin: 0; }
main { max-width: 176mm; margin: 0 auto; padding: 10mm 0; }
main.dense { font-size: 9.2pt; line-height: 1.36; }
main.densest { font-size: 8.2pt; line-height: 1.3; }
header { display: flex; justify-content: space-between; align-items: flex-end; gap: 8mm; border-bottom: 0.5pt solid #000; padding-bottom: 4mm; margin-bottom: 5mm; }
.lead { margin: 0 0 1mm; font-size: 0.92em; font-style: italic; }
h1 { margin: 0; font-size: 2.5em; line-height: 1.05; font-weight: 400; letter-spacing: -0.01em; }
.horse { margin: 1.6mm 0 0; }
header table { border-collapse: collapse; font-size: 0.92em; }
header th { font-weight: 400; font-style: italic; text-align: left; padding: 0 4mm 0 0; }
header td { padding: 0; text-align: right; }
figure { float: right; width: 50mm; margin: 0.5mm 0 3mm 8mm; }
figcaption { font-size: 0.68em; line-height: 1.35; margin-top: 1.5mm; hyphens: auto; }
.mouth { display: block; width: 100%; height: auto; }
.mouth rect { fill: #fff; stroke: #000; stroke-width: 0.9; }
.mouth .left rect { stroke: #8a8a8a; stroke-width: 0.6; stroke-dasharray: 1.6 1.6; }
.mouth .full { fill: #000; stroke: #000; stroke-width: 1; }
.mouth .open { fill: #fff; stroke: #000; stroke-width: 1; }
.mouth .work { stroke: #000; stroke-width: 1.7; }
.mouth .row { fill: none; stroke: #000; stroke-width: 1; }
.mouth .gap path { stroke: #000; stroke-width: 0.7; }
.mouth text { font-size: 8.4px; text-anchor: middle; font-family: inherit; }
.mouth .side { font-style: italic; font-size: 9px; fill: #333; }
section { margin: 0 0 3.4mm; }
h2 { margin: 0 0 0.9mm; font-size: 1.14em; font-weight: 700; break-after: avoid; }
p { margin: 0; orphans: 2; widows: 2; }
dl { margin: 0; }
dt { font-style: italic; float: left; clear: left; margin-right: 0.55em; }
dt::after { content: '.'; }
dd { margin: 0 0 1.1mm; }
.left-out { font-size: 0.9em; margin: 0 0 3mm; }
.cautions { clear: both; font-size: 0.8em; line-height: 1.36; border-top: 0.5pt solid #000; padding-top: 2.4mm; margin-top: 4mm; }
.cautions h2 { font-size: 1.1em; }
.cautions ul { margin: 0; padding: 0; list-style: none; }
.cautions li { margin: 0 0 1mm; }
cite { color: #333; }
footer { clear: both; border-top: 0.5pt solid #000; padding-top: 2.4mm; margin-top: 4mm; font-size: 0.84em; }
footer p + p { margin-top: 0.6mm; color: #333; }
.draft { display: inline-block; border: 1pt solid #000; padding: 0.6mm 3mm; margin: 0 0 4mm; font-weight: 700; }
@media screen { html { background: #f2f2ef; } body { padding: 6mm 0; } main { background: #fff; width: 210mm; max-width: 100%; padding: 15mm 17mm; } }
@media screen and (max-width: 640px) { main { padding: 6mm 5mm; } header { flex-direction: column; align-items: flex-start; } figure { float: none; margin: 0 auto 4mm; } header td { text-align: left; } }
@media print { main { padding: 0; max-width: none; } section, li { break-inside: avoid; } }
`;
