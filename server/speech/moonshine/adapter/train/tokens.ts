/**
 * Token ids of every written line, and the vocabulary's pieces, for train.py. One JSON object: `{ ids: { line: [...] }, pieces: [...] }`.
 * Usage: npx tsx tokens.ts OUT.json LINES.tsv... (the last column of a line is what is written)
 */
import { readFileSync, writeFileSync } from 'node:fs';
import tokenizer from 'llama-tokenizer-js';
import { encodeSentence } from '../../tokens.ts';

const [out, ...tables] = process.argv.slice(2);
if (out === undefined || tables.length === 0) throw new Error('Usage: tokens.ts OUT.json LINES.tsv...');
const written = tables.flatMap((table) =>
  readFileSync(table, 'utf8')
    .trim()
    .split('\n')
    .map((line) => line.split('\t').at(-1) as string),
);
writeFileSync(
  out,
  JSON.stringify({ ids: Object.fromEntries(written.map((line) => [line, encodeSentence(line)])), pieces: tokenizer.vocabById }),
);
