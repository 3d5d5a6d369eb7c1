import { scan } from './parser/grammar/scan.ts';
import { roles } from './parser/grammar/roles.ts';
import { tokenise } from './parser/grammar/tokens.ts';
for (const a of process.argv.slice(2)) { const t = tokenise(a.split(' ')); const { marks } = scan(t); const r = roles(marks, t, false).role; marks.forEach((m, i) => console.log(t.slice(m.from, m.to).map((x: any) => x.t).join(' '), '|', r[i], '|', m.place ? 'PLACE' : (m.terms ?? []).map((x) => x.k + (x.k === 'work' ? ':' + x.term.as : x.k === 'condition' ? ':' + x.id : '')).join(','))); }
