import { rowsOf, readLines, headerOf, goldRoot } from './tests/parser/corpus.ts';
import { difference } from './tests/match.ts';
import { sound } from './tests/parser/sound.ts';
import { readFileSync } from 'node:fs';
const known = new Set(JSON.parse(readFileSync('fixtures/known-failures.json', 'utf8')) as string[]);
let n = 0;
for (const row of rowsOf(goldRoot)) { if (known.has(row.said)) continue;
  const bad = readLines(row.lines.map((l) => l.say), headerOf(row.given)).flatMap((r, i) => { const d = difference(row.lines[i]!.expect ?? {}, r); return [...d.missing.map((m) => '- ' + m), ...d.extra.map((m) => '+ ' + m), ...sound(r)]; });
  if (bad.length) { n++; console.log(row.file, '|', row.said); bad.forEach((b) => console.log('     ' + b)); } }
console.log(n, 'wrong');
