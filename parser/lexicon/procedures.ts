/** Procedures (contract sections 7, 11, 12). */
export interface ProcedureEntry { readonly label: string; readonly done: string; readonly needsPlace: boolean; readonly say: readonly string[] }
export const procedures = {
  rasp: { label: 'Rasp', done: 'rasped', needsPlace: false, say: ['rasp(ed)'] },
  reduce: { label: 'Reduce', done: 'reduced', needsPlace: true, say: ['reduce(d)'] },
  'bit-seat': { label: 'Bit seat', done: 'bit seat made', needsPlace: false, say: ['bit seat(s)'] },
  round: { label: 'Round off', done: 'rounded', needsPlace: true, say: ['round(ed)'] },
  buff: { label: 'Buff', done: 'buffed', needsPlace: true, say: ['buff(ed)'] },
  extract: { label: 'Extract', done: 'extracted', needsPlace: true, say: ['extract(ed)'] },
  'remove-cap': { label: 'Remove cap', done: 'cap removed', needsPlace: true, say: ['cap (off|removed)'] },
  'scale-calculus': { label: 'Scale calculus', done: 'calculus scaled', needsPlace: true, say: ['scaled'] },
  flush: { label: 'Flush', done: 'flushed', needsPlace: true, say: ['flush(ed)'] },
  rinse: { label: 'Rinse', done: 'rinsed', needsPlace: false, say: ['rinse(d)'] },
  pack: { label: 'Pack', done: 'packed', needsPlace: true, say: ['pack(ed)'] },
  'widen-space': { label: 'Widen the gap', done: 'gap widened', needsPlace: true, say: ['widen(ed)'] },
  restore: { label: 'Restore', done: 'restored', needsPlace: true, say: ['restored', 'filled'] },
  'reduce-incisors': { label: 'Reduce incisors', done: 'incisors reduced', needsPlace: false, say: ['incisors reduced'] },
  debride: { label: 'Debride', done: 'debrided', needsPlace: true, say: ['debride(d)'] },
  coronectomy: { label: 'Coronectomy', done: 'coronectomy', needsPlace: true, say: ['coronectomy'] },
  'endodontic-treatment': { label: 'Endodontic treatment', done: 'endodontic treatment', needsPlace: true, say: ['root canal'] },
  radiograph: { label: 'Radiograph', done: 'radiographed', needsPlace: false, say: ['radiograph(s)'] },
  oroscopy: { label: 'Oroscopy', done: 'oroscopy', needsPlace: false, say: ['oroscopy'] },
  photograph: { label: 'Photograph', done: 'photographed', needsPlace: false, say: ['photograph(s)'] },
  'recheck-by-feel': { label: 'Re-check by feel', done: 're-checked by feel', needsPlace: false, say: ['rechecked'] },
  'remove-foreign-body': { label: 'Remove foreign body', done: 'foreign body removed', needsPlace: false, say: ['foreign body removed'] },
  'nerve-block': { label: 'Nerve block', done: 'nerve block', needsPlace: false, say: ['nerve block'] },
} as const satisfies Record<string, ProcedureEntry>;
export type ProcedureId = keyof typeof procedures;
export const procedureIds = Object.keys(procedures) as [ProcedureId, ...ProcedureId[]];
