/** Writes events in a loop until it is killed; each line on standard output names an event that was acknowledged. */
import { openStore } from '../../server/records/index.ts';
import { applyEvent, foldDraft } from '../../server/session/reduce.ts';
import { by, header, hook, said, when } from '../session/made.ts';
import { confirm } from './exam.ts';

const store = openStore(process.argv[2]!);
const run = process.argv[3]!;
for (let exam = 0; ; exam++) {
  const id = `${run}-${exam}`;
  store.createExam(id, header(`Horse ${id}`), by, when);
  let draft = foldDraft(id, store.events(id));
  for (let n = 0; n < 12; n++) {
    const pair = [
      said(`${id}:${n}a`, 'one oh six hook', { items: [hook('106', n)] }, [n, n + 1]),
      said(`${id}:${n}b`, 'two oh six hook', { items: [hook('206', n)] }, [n, n + 1]),
    ];
    const next = pair.reduce(applyEvent, draft);
    store.append(id, pair, next);
    draft = next;
    process.stdout.write(`${id} ${draft.seq}\n`);
  }
  confirm(store, id);
  process.stdout.write(`${id} confirmed\n`);
}
