import { rowsOf, readLines, headerOf } from './tests/parser/corpus.ts';
import { difference } from './tests/match.ts';
let c = { right: 0, asked: 0, silent: 0 };
const show = process.argv[3];
for (const row of rowsOf(process.argv[2]!)) readLines(row.lines.map((l) => l.say), headerOf(row.given)).forEach((r, i) => { const d = difference(row.lines[i]!.expect ?? {}, r); const ok = d.missing.length + d.extra.length === 0; const k = ok ? 'right' : r.doubts.length ? 'asked' : 'silent'; c[k]++; if (show && !ok) { console.log(row.lines[i]!.say); d.missing.forEach((m) => console.log('    - ' + m)); d.extra.forEach((m) => console.log('    + ' + m)); } });
console.log(c);
