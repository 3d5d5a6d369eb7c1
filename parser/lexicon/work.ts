/** Words of work: procedures and how they stand, tools, amounts; sedation and medicines; what comes next. */
import type { ProcedureId } from './procedures.ts';

export type WorkState = 'done' | 'planned' | 'advised' | 'declined' | 'not-done' | 'attempted' | 'part-done';
export type WorkTerm =
  | { readonly as: 'procedure'; readonly id: ProcedureId; /** The form is a verb of doing ("rasped"); a noun waits for a state. */ readonly done?: true; readonly instrument?: Instrument }
  | { readonly as: 'state'; readonly state: WorkState }
  | { readonly as: 'instrument'; readonly instrument: Instrument }
  | { readonly as: 'water' }
  | { readonly as: 'outcome'; readonly outcome: 'complete' | 'root-retained' }
  /** What a gap is packed with: work, no feed. */
  | { readonly as: 'filling' }
  | { readonly as: 'level' }
  | { readonly as: 'off' }
  | { readonly as: 'sedate' } | { readonly as: 'topUp' } | { readonly as: 'given' } | { readonly as: 'prescribed' }
  | { readonly as: 'agent'; readonly agent: string; readonly class: 'sedative' | 'medicine' }
  | { readonly as: 'route'; readonly route: 'iv' | 'im' | 'oral' | 'sublingual' }
  | { readonly as: 'vet' } | { readonly as: 'owner' }
  | { readonly as: 'recheck' } | { readonly as: 'refer' } | { readonly as: 'monitor' } | { readonly as: 'advise' } | { readonly as: 'report' } | { readonly as: 'noBit' }

export type Instrument = 'hand' | 'motorised' | 'fingers' | 'forceps' | 'elevator';

type Row = WorkTerm & { readonly say: readonly string[] };
const p = (id: ProcedureId, done: readonly string[], noun: readonly string[]): readonly Row[] => [{ as: 'procedure', id, done: true, say: done }, { as: 'procedure', id, say: noun }];

export const workSay: readonly Row[] = [
  ...p('rasp', ['rasped [off]', 'floated', 'dressed', 'filed', 'balanced', '(ran|run|took|put|had) (a|the) (rasp|float|file) (round|over|along|through|across) [the]', '(did|gave) [(a|the|his|her)] [(full|routine|quick|light|good|thorough|general|normal|proper|standard)] (rasp|float|rasping|floating)', 'tidied [up]', '(took|knocked) the sharpness off', '(filed|rasped) smooth', 'floated smooth', '(rasped|floated|took|removed|filed) [off] [(the|those|these|all the)] [sharp] [enamel] (points|edges) [(off|away|down)]', '[sharp] [enamel] (points|edges) (rasped|removed|floated|taken off|filed) [(off|away|down)]'], ['rasp', 'float', 'rasping', 'floating', '(routine|full|light|quick|good|thorough|general|proper|standard|normal) (rasp|float|rasping|floating|dental)', '(full|whole) mouth (rasp|float)']),
  ...p('reduce', ['reduced', 'took down', 'taken down', 'lowered', 'shortened', 'trimmed [(back|down)]', 'cut (back|down)', 'ground [down]', 'levelled', 'leveled', '(took|brought|got|ground|knocked|filed|rasped) (it|them|that|this|these|those) [both] down', 'brought down', 'knocked down', 'brought level', 'ground level', 'took (it|them|that|both) level', '(reduced|lowered|took down|ground down|removed) [(the|that|this|those|these)] (hook|hooks|ramp|ramps|step|steps|overgrowth|overgrowths|wave)', 'took [(the|that|this|those|these)] (hook|hooks|ramp|ramps|step|steps|overgrowth|overgrowths|wave) (down|off|back)', '(hook|hooks|ramp|ramps|step|steps|overgrowth|overgrowths) (reduced|taken down|taken off|removed|taken back|lowered)'], ['reduce', 'reduction', 'reducing', 'take down', 'odontoplasty']),
  ...p('bit-seat', ['bit seated', 'profiled', '(made|put|put in|cut|did|created|placed|gave|shaped) [(him|her)] [(a|the|some|new)] [(small|little|wee|light|new)] bit seat(s)', 'bit seat(s) (made|done|put in|put on|placed|created|cut|formed|reshaped|touched up|refreshed)'], ['bit seat(s)', 'rostral profiling', 'bullnose']),
  ...p('round', ['rounded [off]', 'smoothed [(off|over|down)]', 'took the (corner|corners) off', '(corner|corners) (taken|knocked) off', 'rounded over'], ['round off', 'rounding [off]', 'smoothing [off]']),
  ...p('buff', ['buffed [smooth]', 'polished [(up|smooth)]'], ['buff', 'buffing']),
  ...p('extract', ['extracted', 'pulled [out]', 'taken out', 'took out', 'came out [(whole|clean|cleanly|complete|intact|easily|nicely|in one [piece])]', 'out (whole|clean|cleanly|complete|intact|in one [piece])', 'elevated', 'removed'], ['extract', 'extraction', 'extracting', 'to come out', 'coming out', 'needs to come out', 'removal']),
  ...p('remove-cap', ['cap(s) (off|removed|popped|out|pulled|(taken|lifted|flicked|popped|prised) (off|out))', '(took|popped|pulled|taken|flicked|removed) [the] cap(s) [(off|out|from)]', '(took|popped|pulled) off [the] cap(s)'], ['cap removal', 'remove [the] cap(s)']),
  ...p('scale-calculus', ['scaled', 'descaled', 'scaled off', '(removed|took off|cleaned off|took|cleaned|chipped|knocked|flaked|scraped|cracked|picked|popped|scaled|got) [(the|his|her|some|that|all the)] (tartar|calculus) [(from|off)]', '(tartar|calculus) (removed|scaled|off|[(all|both)] (taken|cleaned|chipped|knocked|scraped|popped|flaked) [off])'], ['scale', 'scaling', 'remove [the] (tartar|calculus) [from]']),
  ...p('flush', ['flushed [(out|through|clean|out clean|it out|them out)]', 'irrigated', 'lavaged', 'cleaned [(it|them|that)] out', 'picked [(it|them)] [(out|clean)]', 'cleared [(it|them)] out', 'washed out', '(picked|cleaned|hooked|scraped|cleared|pulled|dug|got|flushed|washed) [all] [the] [packed] (feed|food|hay|grass|haylage|debris|muck) out [of]', '[all the] [packed] (feed|food|hay|grass|debris) (picked|cleaned|flushed|cleared|hooked) out [(of|from)]'], ['flush', 'flushing', 'irrigation', 'lavage']),
  ...p('rinse', ['rinsed [out]', 'washed', 'gave [(him|her|it)] [(his|her|the)] [mouth] a (rinse|wash out|rinse out)', 'washed [(him|her)] out'], ['rinse [out]', 'rinsing']),
  ...p('pack', ['packed [(with putty|with impression material|and plugged)]', 'plugged', 'plugged [with] [some] (putty|silicone|impression material|wax)', '(put|placed|pushed|pressed) [(a bit of|some|the)] (putty|impression material|silicone|packing) (in|into|between) [the]', '(putty|impression material|silicone) (put|placed|pushed) (in|into) [the]', 'bridged'], ['packing', 'plug', 'bridging']),
  ...p('widen-space', ['widened [(the gap|the space|the diastema)]', 'burred out', 'opened [up] [(it|the gap|the space|the diastema|that gap)]', '(gap|space|diastema) (widened|opened [up]|burred [out])'], ['widen [the] (gap|space|diastema)', 'widening', 'diastema widening', '(gap|space) to be widened']),
  ...p('restore', ['restored', 'filled [it]'], ['restoration', 'filling', 'restore']),
  ...p('reduce-incisors', ['(incisors|incisor) (reduced|levelled|leveled|realigned|aligned)', '(reduced|levelled|leveled|realigned|aligned) [the] incisors'], ['incisor (reduction|realignment|alignment)', 'reduce [the] incisors']),
  ...p('debride', ['debrided', 'curetted'], ['debride', 'debridement', 'curettage']),
  ...p('coronectomy', ['sectioned'], ['[partial] coronectomy', 'sectioning']),
  ...p('endodontic-treatment', [], ['root canal [treatment]', 'endodontic (treatment|therapy)', 'pulpotomy']),
  ...p('radiograph', ['radiographed', 'x rayed', '(took|taken|did|got|shot) [(some|an|a|two|three|a couple of|a few)] (radiograph|x ray|film|radiographs|x rays|films) [of]', '(radiograph|x ray|film|radiographs|x rays|films) (taken|done) [of]'], ['radiograph(s)', 'x ray(s)', 'films']),
  ...p('oroscopy', ['scoped [(him|her|it|the mouth|round)] [(after|afterwards)]', '(had|put|ran) (the|a) scope (in|round|down) [(after|afterwards)]', 'oral endoscopy done', 'oroscopy done', 'scope (done|used)', '(oroscopic|endoscopic) (exam|examination) (done|carried out|performed)'], ['oroscopy', '(oroscopic|endoscopic) (exam|examination)', 'oral endoscopy', 'scope']),
  ...p('photograph', ['photographed', '(photograph|photographs|photo|photos|picture|pictures) (taken|done) [of]', '(took|taken|got|snapped|did) [(a|some)] (photograph|photographs|photo|photos|picture|pictures) [of]'], ['photograph(s)', 'photo(s)', 'picture(s)']),
  ...p('recheck-by-feel', ['(checked|rechecked|re checked|felt|went over) (everything|it all|all of it|them all|it all over|all round|the lot) [again] by (feel|hand) [(after|afterwards|at the end)]', 'rechecked [(everything|it all)] by (feel|hand|finger)', 're checked by (feel|hand)', '(felt|checked) (round|around|over) [(it|everything)] again [(by hand|after|afterwards|at the end)]', 'felt (everything|it all|them all|all of it) again [(after|afterwards|at the end)]', 'went round [(it all|everything)] again by (feel|hand)', 'by feel afterwards', 'all felt again [after]'], ['recheck by (feel|hand)']),
  ...p('remove-foreign-body', ['(removed|took out|pulled out) [(a|the)] (stick|thorn|foreign body|splinter|piece of wood|awn)', '(foreign body|stick|thorn|splinter|awn) (removed|taken out|pulled out)'], ['remove [the] foreign body']),
  ...p('nerve-block', ['blocked', '(nerve|infraorbital|mental|maxillary|mandibular) block (given|done|placed)'], ['[(infraorbital|mental|maxillary|mandibular)] nerve block']),
  { as: 'procedure', id: 'reduce', done: true, instrument: 'motorised', say: ['burred [down]', 'burred (it|them|that|this) down', 'drilled down', 'burred back'] },
  { as: 'procedure', id: 'rasp', done: true, instrument: 'hand', say: ['hand (rasped|floated)'] },
  { as: 'state', state: 'done', say: ['done', 'did', 'carried out', 'completed', 'performed'] },
  { as: 'state', state: 'planned', say: ['plan [is] [to]', 'planned', 'planning [to]', 'will (need|be|get)', 'next time', 'next visit', 'to be', 'due [to be]', 'going to', 'book(ed) (in|for)', 'needs to be', 'will do', 'to (do|come)'] },
  { as: 'state', state: 'advised', say: ['advise(d)', 'recommend(ed)', 'suggest(ed)'] },
  { as: 'state', state: 'declined', say: ['[owner] declined', '[owner] refused', 'owner (does not|did not) want', 'owner said no to', 'declined by [the] owner'] },
  { as: 'state', state: 'not-done', say: ['not done', 'left alone', 'not touched', 'left as [it] is', 'not treated', 'no treatment'] },
  { as: 'state', state: 'attempted', say: ['attempted', 'tried [to]', 'attempt [to]'] },
  { as: 'state', state: 'part-done', say: ['part done', 'partly done', 'part (one|two|three) of (two|three|four)', 'started', 'half done'] },
  { as: 'instrument', instrument: 'hand', say: ['[by] hand', 'by hand', '[(with|using)] [(the|a)] hand (rasp|float|rasps|floats|tools|file|held rasp)', 'all by hand', 'hand tools only', 'hand only', 'manually', 'manual [(rasp|float)]'] },
  { as: 'instrument', instrument: 'motorised', say: ['[(with|using)] [(the|a)] (motorised|motorized|power|powered|electric) (rasp|float|tool|tools|burr|disc)', '[(with|using)] [(the|a)] (burr|disc|drill|grinder|power tool|power tools|power)', 'motorised', 'motorized'] },
  { as: 'instrument', instrument: 'fingers', say: ['(with|by) [(my|the)] (finger|fingers)', 'digitally', 'finger'] },
  { as: 'instrument', instrument: 'forceps', say: ['[(with|using)] [(the|a)] forceps'] },
  { as: 'instrument', instrument: 'elevator', say: ['[(with|using)] [(the|an)] elevator(s)'] },
  { as: 'water', say: ['and [(cold|running)] water', 'plenty of water', '[with] [the] water [kept] (on|running|going|running throughout)', 'water cooled throughout', 'irrigated throughout', '[with] water spray', 'wet burr', '(with|under) [(the|some|cold|running)] [(running|cold)] water [(on|running)]', 'water (running|on)', 'water cooled', 'water cooling', 'with irrigation', 'wet'] },
  { as: 'outcome', outcome: 'complete', say: ['[all] came [out] (whole|intact|in one [(piece|go)])', '[out] (whole|intact|in one (piece|go))', '[(and it|and|it)] came [out] (clean|cleanly|complete|whole|intact|in one [(piece|go)])', '(root|roots|tip|root tip|apex|whole root) (intact|complete|and all|whole|present|all there|came with it|came too|out)', '[complete] with [(its|the|whole|full|all of its|all the)] [(whole|full|entire|complete)] (root|roots)', 'root and all', 'roots and all', '[the] whole [(tooth|thing)] [came] out', '(came|out) [away] complete', 'all of it [came] out', 'got (all of it|it all|the whole thing|the lot|the whole root) [out]', 'in its entirety', 'no root left', 'out (clean|cleanly)'] },
  { as: 'outcome', outcome: 'root-retained', say: ['(root|roots|root tip|apex|tip|tip of the root|bit of root|piece of root) [(has|was)] (left [(in|behind|there)]|stayed [(in|behind)]|retained|remained|behind|snapped [off]|broke [off]|broken [off]|fractured|still in)', '(left|leaving) [(a bit of|part of|a piece of)] [(the|a)] (root|root tip|apex|tip of the root|root fragment) [(in|behind|there)]', '(snapped|broke|fractured) [off] at the root', 'root (fracture|fragment) (left|retained)', '(lost|left) the (root|tip|root tip)'] },
  { as: 'filling', say: ['plugged with (putty|silicone|impression material)', 'with [(some|a bit of)] (putty|impression material|silicone|dental putty|wax|gauze|a plug)', 'and plugged'] },
  { as: 'level', say: ['[(down|back|right down)] [to] [be] level [with]', 'to [the] level [of]', 'level with', 'flush [with]', 'in line with', '[(till|until)] [it is] level', 'back into (occlusion|line)', 'to match', 'to the [same] height [(as|of)]'] },
  { as: 'off', say: ['off', 'took', 'taken off', 'took off'] },
  { as: 'sedate', say: ['sedated', 'sedation', 'standing sedation', 'sedate', 'unsedated'] },
  { as: 'topUp', say: ['top up [(dose|of sedation|sedation)]', 'topped up', 'topup'] },
  { as: 'given', say: ['given', 'gave', 'had', 'administered', 'injected'] },
  { as: 'prescribed', say: ['prescribed', 'on prescription'] },
  ...([['detomidine', ['detomidine', 'deto']], ['romifidine', ['romifidine', 'romi']], ['xylazine', ['xylazine']], ['medetomidine', ['medetomidine']], ['dexmedetomidine', ['dexmedetomidine']], ['butorphanol', ['butorphanol', 'butorphanol tartrate']], ['acepromazine', ['acepromazine', 'ace', 'a c p', 'acp']], ['morphine', ['morphine']], ['methadone', ['methadone']], ['ketamine', ['ketamine']], ['diazepam', ['diazepam']]] as const).map(([agent, say]) => ({ as: 'agent', agent, class: 'sedative', say }) as const),
  ...([['phenylbutazone', ['phenylbutazone', 'bute']], ['flunixin', ['flunixin']], ['meloxicam', ['meloxicam']], ['penicillin', ['penicillin']], ['trimethoprim-sulfonamide', ['trimethoprim sulph(a|onamide)', 't m p s']], ['metronidazole', ['metronidazole']], ['mepivacaine', ['mepivacaine']], ['lidocaine', ['lidocaine', 'lignocaine']], ['tetanus-antitoxin', ['tetanus antitoxin', 'antitoxin']], ['antibiotic', ['antibiotic(s)']], ['anti-inflammatory', ['anti inflammator(y|ies)', 'antiinflammatories']]] as const).map(([agent, say]) => ({ as: 'agent', agent, class: 'medicine', say }) as const),
  { as: 'route', route: 'iv', say: ['i v', 'iv', 'intravenous(ly)', 'in the vein', 'into the vein'] },
  { as: 'route', route: 'im', say: ['i m', 'im', 'intramuscular(ly)', '(in|into) the muscle'] },
  { as: 'route', route: 'oral', say: ['oral(ly)', 'by mouth', 'oral (gel|paste)'] },
  { as: 'route', route: 'sublingual', say: ['sublingual(ly)', 'under the tongue gel', 'sublingual gel'] },
  { as: 'vet', say: ['[by] [(the|a|her|his|their|own)] (vet|veterinarian|veterinary surgeon)', 'vet'] },
  { as: 'owner', say: ['[the] owner'] },
  { as: 'recheck', say: ['recheck', 're check', '(wants|needs) (doing|seeing|checking|looking at) again', 'to be (done|seen|checked) again', 'doing again', 'from (now|here) on', '(monthly|yearly) (check|checks|visits|rechecks)', '(see|check|look at) (him|her|it|them) [again]', '(see|check|look) again', 'back', 'come back', 'next (visit|exam|check) [due]', 'follow up', 'review', 'due [again] in', 'again in', 'routine recheck', '[have] (a|another) look', 'due (a|another) look', 'pop back', '(bring|have|get|fetch) (him|her|it|them) back', 'book (him|her|it|them) [back] in', 'book [back] in', '(wants|needs|want|due|wanting) (doing|seeing|looking at|checking) [again]', '(be|get) (seen|checked|looked at|done) again', 'do (him|her|it|them) again', 'revisit', 're visit', 'return visit', '(same again|again) (this time|in|next)', 'come (out|round) again', 'be back'] },
  { as: 'refer', say: ['[the] vet (needs|wants|has|ought) to (see|check|look at|take a look at|have a look at|examine|x ray)', '[the] vet should (see|check|look at|take a look at|have a look at)', 'get the vet (to|out)', 'ask the vet to (see|check|look at|take a look at)', 'refer(red)', 'referral', 'needs the vet', 'needs a vet', 'wants the vet', 'wants a vet', 'vet to (see|look at|check)', 'needs to see the vet', 'for the vet [to see]', 'one for the vet', 'needs looking at by the vet', 'should see the vet'] },
  { as: 'monitor', say: ['monitor(ed)', 'to be monitored', 'being monitored', 'keep (an|a close|a good|a careful|a) eye on', 'keep watching', 'keep checking', 'watch', 'keep monitoring', 'observe'] },
  { as: 'advise', say: ['(advised|told|asked) [the] owner [to]', '[the] owner (advised|told|asked) [to]', 'advice to [the] owner [to]'] },
  { as: 'report', say: ['send [(a|the)] report [to]', 'report to', 'send [(this|it)] to', '(send|email|e mail|post|forward|text) [(a|the|this|him|her|them)] [(a|the)] (report|chart|notes|copy) [over] [to]'] },
  { as: 'noBit', say: ['rest from the bit', 'off the bit', 'bitless', 'not to be bitted', 'no bit (in|for|until)', '(leave|keep) the bit out', 'leave [the] bit out', 'bit out', 'out of the bit', '(leave|keep) (him|her|it) out of the bit', 'without a bit'] },
];
