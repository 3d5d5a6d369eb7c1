/** Words that govern a verb of work, and what they make of it: "managed to reduce", "should be reduced", "would not let me reduce". */
import type { WorkState } from './work.ts';

export interface Governing {
  readonly state: Exclude<WorkState, 'attempted'>;
  readonly say: readonly string[];
  /** Only where the phrase says that it is for later. */
  readonly later?: true;
  /** Only where the phrase says that it was broken off in the middle. */
  readonly halfway?: true;
  /** Only before a gerund: "not level" is no work. */
  readonly gerund?: true;
  /** Of a tooth taken out an attempt is recorded instead. */
  readonly tried?: true;
}
const me = '(me|us|anyone|anybody)';
const us = '(i|we|she|he|they|you)';

/** Before an infinitive or a gerund. */
export const governing: readonly Governing[] = [
  { state: 'done', say: ['managed to', '(was|were) able to', 'had to', '(finished|have finished|ended up|got round to|got around to)', 'took the (time|opportunity|chance) to', 'got to', '(went|carried) on to', `(he|she|it) let ${me}`, 'was (finally|eventually) able to', '(finally|eventually) managed to', 'succeeded in'] },
  { state: 'not-done', tried: true, say: ['(can|could) not [(quite|really|possibly|manage to|get to)]', '(was|were|am|is) [(just|quite|really)] (unable|not able|not going to be able) to', '(did|have|had|do) not (manage|managed) to', 'failed to', `(did|do|does|will|would) not let ${me} [(near enough to)]`, `would not (allow|have) ${me} [to]`, 'would not (stand|keep still|hold still|settle) [(enough|long enough)] to', '(no|not enough) (time|light|room|sedation) to', 'ran out of time to', 'too (fidgety|tired|cold|dark|late|sore|tense|restless|upset|fractious|busy|young|old|risky|painful) to'] },
  { state: 'not-done', say: ['(decided|chose|opted|elected|preferred|agreed) not to', '(decided|deciding) against', '(will|would|shall) not', 'am not going to', '(did|do|does) not (need|have|want|wish|intend|plan|get) to', '(did|do|have|had) not (get|got) (round|around) to', '(did|do) not bother [(to|with)]', '(forgot|forgotten|neglected) to', '(did|do) not have (time|a chance|the time|the light) to', 'did not think it (right|wise|worth|necessary) to', '(stopped|stopping) (short of|before)', '(held|holding) off [on]', 'refrained from', 'avoided', 'thought better of', "(would|'d) rather not", '(did|do|does) not', 'see no (need|reason|point) to', 'no (reason|point) (to|in)', 'not (worth|up to)'] },
  { state: 'not-done', gerund: true, say: ['[(am|is|are)] not', 'without'] },
  { state: 'part-done', halfway: true, say: ['[had to] (stop|stopped|stopping|give up|gave up|abandon|abandoned|leave|left|pack in|packed in|break off|broke off) [(on|off|with)] [the]'] },
  { state: 'part-done', say: ['(did|could|can) not [(quite|fully|get to|manage to)] (finish|complete) [off] [the]', '(was|were) (unable|not able) to (finish|complete) [off] [the]', 'never (finished|got to finish|completed) [off] [the]'] },
  { state: 'declined', say: [`(owner|rider|groom|trainer|client|she|he|they) (asked|told|begged|wanted) ${me} not to`, `(did|does|do|would) not want ${me} to`, `would rather (i|we) did not`, '[(has|have)] (said|says|saying) no to', '[has] (turned|turns|turning) down', '(is|was|are|were) against'] },
  { state: 'planned', later: true, say: [`[${us}] (need|needs|want|wants|hope|hopes|aim|remember|intend|mean|have|like|try|ought|look) to`, "(would|'d) like to", '(must|should|could|shall|might|can)', 'leave', 'leaving', 'left', `[${us}] will have to`, 'remind me to', '(do not|must not|never) (forget|let me forget) to', 'saving', 'postponing', 'keep', 'put off', 'delay'] },
  { state: 'planned', later: true, gerund: true, say: ['(am|is|are)'] },
  { state: 'planned', say: ['(intend|intending|hoping|aiming|looking|wanting) to', '(am|are|is) (due|set|booked [in]) to', 'will (have|need|want|try|aim|come back) to'] },
];
/** Between what it is done to and the participle: "the hook should be reduced". */
export const passive: readonly Governing[] = [
  { state: 'advised', say: ['(should|ought to|could do with being|would be (better|best)|would benefit from being|could|might [(need|want|have)] [to]|may [(need|want|have)] [to]) be [ing]', '(could do with|would benefit from|would be (better|best)|would be as well) [being]'] },
  { state: 'planned', say: ['(must|has to|have to|will have to|needs to|need to|will need to|is to|are to|is going to|are going to|is due to|will|shall) be', '(must|will|shall) (get|have to be)'] },
  { state: 'not-done', say: ['(can|could|will|would) not be', '(has|have|had) not [yet] been', '(was|were|is|are) not [being]', '(did|does|do|will) not need (to be|being)', '(has|have|had) not yet been', '(need|needs) not be', 'is yet to be', '(still|yet) to be'] },
];
/** "the owner does not want the hook reduced": what someone will not have, with the thing between. The speaker's own will is no refusal. */
export const refusing: readonly string[] = ['(did|does|do|would) not want', '(will|would) not have', "(would|'d) (rather|prefer) not [to] have", '(prefers|preferred|chose|decided|opted) not to have', '(did|does|do) not wish to have', '(refused|declined|refuses|declines) to have', 'not keen [(on|to)] [(have|having)]', '(is|was|are|were) against [(having|getting)]', '[(has|have)] (said|says|saying) no to [(having|getting)]', '[has] (turned|turns|turning) down [(having|getting)]'];
/** "advised getting the hook taken down": what was advised, with the thing between. */
export const urging: readonly string[] = ['(advise|advised|advising|recommend|recommended|recommending|suggest|suggested|suggesting) [(that|the owner|they|she|he|we)] (get|gets|have|has|getting|having)'];
/** Asked of somebody, and so neither done nor refused. */
export const wishAsked: readonly string[] = ['(do|does|would|did|will) (you|she|he|they|the owner) (want|like|prefer|mind|need)', '(do|would|shall|should|could) (you|i|we) (rather|want|like)', '(should|shall|could|can) (i|we) (have|get)', 'any objection to', 'if you want', 'if (you|she|he|they) (want|like|wants|likes|would like)'];
/** Behind an offer: "offered to reduce the hook but she declined". */
export const offering: readonly string[] = ['offered to', 'offered'];
export const turnedDown: readonly string[] = ['[but] [(owner|she|he|they|it|was)] [was] (declined|refused|turned down|said no|not wanted|did not want (it|that|to))', '[but] no thanks'];
/** Behind work that was broken off. */
export const halfwaySay: readonly string[] = ['(half|part|quarter) way', '(halfway|midway|partway)', 'half (done|finished|through)', 'in the middle'];
/** When a thing for later is to be. */
export const laterSay: readonly string[] = ['next (time|visit|year|month|week|appointment|session|dental)', 'at the next', '(in|until|till|for) (the|next) (spring|summer|autumn|winter|new year)', '(in|until|till) (a|one|two|three|four|five|six|eight|nine|ten|twelve|few) (day|days|week|weeks|month|months|year|years)', '(another|later) (day|time|on)', '(when|once) (he|she|it|the|we|i)', '(in|after|before) [the] (spring|summer|autumn|winter|january|february|march|april|may|june|july|august|september|october|november|december|christmas|easter)', 'tomorrow', 'in a (few|couple of)', 'on the next visit', '(on|in|at) (a|the) (second|follow up|return) (visit|appointment|session)'];
/** Past forms that no rule gives. */
export const irregular: Readonly<Record<string, string>> = {
  take: 'took', taking: 'took', grind: 'ground', grinding: 'ground', draw: 'drew', drawing: 'drew', bring: 'brought', bringing: 'brought', do: 'did', doing: 'did', give: 'gave', giving: 'gave', dig: 'dug', digging: 'dug', cut: 'cut', cutting: 'cut', put: 'put', putting: 'put', leave: 'left', leaving: 'left', break: 'broke', breaking: 'broke',
};
/** The visit to which something is put off. */
export const nextVisit: readonly string[] = ['[(at|on|for|till|until)] [(the|our|my)] next (time|visit|appointment|session|dental) [(round|out)]', '(another|a later) (day|time|visit)', 'when i am [next] back', 'when (i|we) (come|are) back'];
/** Around it: a pronoun for the thing, or nothing, and verbs that say no more than that something is to be done, or left. */
export const puttingOff: readonly string[] = ['so', 'and', 'but', 'just', 'then', 'i', 'we', 'will', 'shall', 'can', 'could', 'to', 'going', 'am', 'are', 'is', 'it', 'that', 'this', 'them', 'those', 'these', 'one', 'the', 'do', 'sort', 'tackle', 'see', 'deal', 'with', 'treat', 'address', 'take', 'taking', 'have', 'get', 'down', 'off', 'out', 'back', 'leave', 'left', 'leaving', 'wait', 'for', 'till', 'until', 'at', 'on', 'rather', 'better', 'best', 'maybe', 'probably', 'a', 'go', 'doing', 'hold', 'keep', 'save'];
