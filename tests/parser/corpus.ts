/** The gold corpus as cases. Each file is a list of `{ say | lines, given, expect }`. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Header } from '../../parser/contract/draft.ts';
import type { Context } from '../../parser/index.ts';
import { emptyContext, parseText, type Parsed } from '../../parser/index.ts';
import { noCarry } from '../../parser/grammar/carry.ts';
import type { Expected } from '../match.ts';

export interface GoldCase {
  readonly say?: readonly string[];
  readonly given?: { readonly age?: number; readonly sex?: string; readonly name?: string };
  readonly expect?: Expected;
  readonly lines?: readonly { readonly say: string; readonly expect: Expected }[];
}
export interface Row {
  readonly file: string;
  readonly said: string;
  readonly given: GoldCase['given'];
  readonly lines: readonly { readonly say: string; readonly expect: Expected }[];
}

export const goldRoot = join(import.meta.dirname, '../../fixtures/gold');

export function rowsOf(root: string): readonly Row[] {
  const files = readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((f) => f.endsWith('.json'))
    .sort();
  return files.flatMap((file) =>
    (JSON.parse(readFileSync(join(root, file), 'utf8')) as GoldCase[]).flatMap((one): Row[] =>
      one.lines
        ? [{ file, said: one.lines.map((l) => l.say).join(' / '), given: one.given, lines: one.lines }]
        : (one.say ?? []).map((say) => ({ file, said: say, given: one.given, lines: [{ say, expect: one.expect ?? {} }] })),
    ),
  );
}

/** `given` of a case as a header. */
export const headerOf = (given: GoldCase['given']): Partial<Header> =>
  given === undefined
    ? {}
    : {
        horse: {
          ...(given.name ? { name: given.name } : {}),
          ...(given.age !== undefined ? { age: { value: given.age, unit: 'year' as const } } : {}),
          ...(given.sex ? { sex: given.sex as 'mare' } : {}),
        },
      };

/** Reads lines as one exam; each line's own result. */
export function readLines(lines: readonly string[], header: Partial<Header> = {}): readonly Parsed[] {
  let context: Context = emptyContext(header);
  return lines.map((line, i) => {
    const result = parseText(`g/${i + 1}`, line, context);
    context = after(context, result);
    return result;
  });
}

/** The context of the next line: what stands once this one is folded in. */
export function after(context: Context, result: Parsed): Context {
  const struck = new Set(result.commands.flatMap((c) => (c.command === 'strike-last' ? (c.targets ?? []) : [])));
  const revised = new Set(result.items.flatMap((item) => (item.revises ? [item.revises] : [])));
  const settled = new Set(result.settles);
  const back = new Set(result.commands.flatMap((c) => (c.command === 'bring-back' ? (c.targets ?? []) : [])));
  return {
    header: { ...context.header, horse: result.header?.horse ? { ...context.header.horse, ...result.header.horse } : context.header.horse },
    items: [...context.items, ...result.items].filter(
      ({ id, revises }) => !struck.has(id) && !revised.has(id) && !(revises && back.has(revises)),
    ),
    doubts: [...context.doubts, ...result.doubts].filter(
      ({ id, item }) => !settled.has(id) && !(item && (struck.has(item) || revised.has(item))),
    ),
    carry: result.carry,
  };
}

/** An exam whose last item was struck: there is something to put back. */
export const afterStrike: Context = { ...emptyContext(), carry: { ...noCarry, undo: [{ command: 'strike-last', ids: [] }] } };
