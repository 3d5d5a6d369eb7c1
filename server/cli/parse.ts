/** `quidnote parse`: typed lines through the grammar. */
import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';
import type { Draft, Header } from '../../parser/contract/draft.ts';
import { Age, Horse } from '../../parser/contract/draft.ts';
import { parseText } from '../../parser/index.ts';
import { untraced } from '../app/understand.ts';
import { contextOf } from '../session/context.ts';
import { applyEvent, emptyDraft } from '../session/reduce.ts';
import { lineOf } from './lines.ts';
import { json, line, rows, tell, exits, type Exit } from './out.ts';
import { z } from 'zod';

/** Header facts on the command line: of the horse, with an age in years as a plain number, and of the visit. */
const Given = z
  .strictObject({ ...Horse.shape, age: z.union([z.number().min(0), Age]), owner: z.string(), yard: z.string(), examiner: z.string() })
  .partial();
export function givenHeader(text: string | undefined): Partial<Header> | null {
  if (text === undefined) return {};
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    value = undefined;
  }
  const given = Given.safeParse(value);
  if (!given.success) return null;
  const { owner, yard, examiner, age, ...rest } = given.data;
  const horse = { ...rest, ...(age !== undefined && { age: typeof age === 'number' ? { value: age, unit: 'year' as const } : age }) };
  return { ...(Object.keys(horse).length && { horse }), ...(owner && { owner }), ...(yard && { yard }), ...(examiner && { examiner }) };
}

/** Lines of one run are one exam; an empty line begins another. */
export async function parseLines(
  input: Readable,
  header: Partial<Header>,
  how: { readonly json: boolean; readonly draft: boolean },
): Promise<Exit> {
  let exam = 0,
    spoken = 0;
  const begin = (): Draft => {
    const draft = emptyDraft(`exam${++exam}`);
    spoken = 0;
    return applyEvent(draft, { event: 'opened', header: { ...draft.header, ...header }, by: 'typed', when: '' });
  };
  let draft = begin();
  const end = (): void => {
    if (how.draft && spoken > 0) json(draft);
  };
  for await (const text of createInterface({ input, crlfDelay: Infinity })) {
    if (text.trim() === '') {
      end();
      draft = begin();
      continue;
    }
    const result = untraced(parseText(`${draft.id}:${++spoken}`, text.trim(), contextOf(draft)));
    const waits = draft.paused && !result.commands.some(({ command }) => command === 'resume');
    const shown = waits ? { ...result, items: [], commands: [], doubts: [], hints: [], settles: [] } : result;
    draft = waits ? draft : applyEvent(draft, { event: 'said', result, when: '' });
    if (how.draft) continue;
    if (how.json) json(lineOf(shown));
    else rows(shown).forEach(line);
    const horse = result.commands.find(({ command }) => command === 'next-horse');
    if (horse && !waits)
      tell(`(In a recorded file, a new exam would begin here${horse.name ? `: ${horse.name}` : ''}. Put an empty line for that.)`);
  }
  end();
  return exits.ok;
}
