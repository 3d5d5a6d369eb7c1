/** `quidnote search`, `export` and `erase`. */
import { SearchQuery } from '../../parser/contract/wire.ts';
import { eraseIn, exportExam as exported } from '../app.ts';
import type { Store } from '../records/index.ts';
import { foldDraft } from '../session/reduce.ts';
import { exits, json, line, tell, time, type Exit } from './out.ts';

/** Exit status 1 when nothing was found, as programs that search do. */
export function searchBook(book: Store, asked: Record<string, unknown>, asJson: boolean): Exit {
  const query = SearchQuery.safeParse(asked);
  if (!query.success) {
    tell(`That is not a search: ${query.error.issues.map((issue) => issue.path.join('.')).join(', ')}. See quidnote --help.`);
    return exits.usage;
  }
  const hits = book.search(query.data);
  book.close();
  if (asJson) hits.forEach(json);
  else
    for (const hit of hits)
      line(
        `${(hit.startedAt ?? '').slice(0, 10).padEnd(10)}  ${(hit.horse ?? 'not named').padEnd(16)}  ${hit.at ? time(hit.at[0]).padStart(7) : '       '}  ${hit.text}  (${hit.exam})`,
      );
  if (hits.length === 0) tell('Nothing found.');
  return hits.length ? exits.ok : exits.failed;
}

export function exportExam(book: Store, exam: string): Exit {
  json(exported(foldDraft(exam, book.events(exam))));
  book.close();
  return exits.ok;
}

export async function eraseFrom(
  dir: string,
  ids: readonly string[],
  how: { readonly horse?: string | undefined; readonly yes?: boolean | undefined; readonly sound?: boolean | undefined },
): Promise<Exit> {
  if ((ids.length === 1) === (how.horse !== undefined)) {
    tell('erase wants the id of one exam, or --horse NAME. See quidnote --help.');
    return exits.usage;
  }
  if (!how.yes) {
    tell('Erasing cannot be undone. Nothing was erased. Say --yes to do it.');
    return exits.failed;
  }
  const gone = await eraseIn(dir, how.horse !== undefined ? { horse: how.horse } : { exam: ids[0]!, what: how.sound ? 'sound' : 'exam' });
  tell(`Erased: ${gone.length} ${gone.length === 1 ? 'exam' : 'exams'}${how.sound ? ' (sound only)' : ''}.`);
  return gone.length ? exits.ok : exits.failed;
}
