import { readFileSync } from 'node:fs';
import { rowsOf, readLines, headerOf } from './tests/parser/corpus.ts';
import { difference, bare } from './tests/match.ts';
const want = process.argv.slice(3);
for (const row of rowsOf(process.argv[2]!)) { const rs = readLines(row.lines.map((l) => l.say), headerOf(row.given));
 rs.forEach((r, i) => { const d = difference(row.lines[i]!.expect ?? {}, r); if (d.missing.length + d.extra.length === 0) return; const say = row.lines[i]!.say; if (want.length && !want.some((w) => say.includes(w))) return;
  console.log('=== ' + say); for (let k = Math.max(0, i - 3); k < i; k++) { console.log('   [' + row.lines[k]!.say + ']'); for (const x of rs[k]!.items) { const b: any = bare(x); console.log('        ' + [b.kind[0], b.condition ?? b.procedure ?? b.action ?? b.about, b.presence, JSON.stringify(b.place)].join(' ')); } }
  d.missing.forEach((m) => console.log('    - ' + m)); d.extra.forEach((m) => console.log('    + ' + m)); }); }
