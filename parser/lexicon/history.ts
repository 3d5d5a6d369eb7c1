/** Words that say when: what was, what has gone since, and what was said to be coming. */
import type { ScopeCue } from './scopes.ts';

const days = '(monday|tuesday|wednesday|thursday|friday|saturday|sunday)';
const months = '(january|february|march|april|may|june|july|august|september|october|november|december)';
const seasons = `(spring|summer|autumn|winter|fall|season|${months})`;
/** Names of times of the year: no thing that a finding could be of. */
export const timesOfYear: readonly string[] = ['january', 'february', 'march', 'april', 'may', 'june', 'july', 'august', 'september', 'october', 'november', 'december', 'spring', 'summer', 'autumn', 'winter', 'christmas', 'easter'];
const since = '[(about|around|roughly|only|just|nearly|over)] (a|one|two|three|four|five|six|eight|ten|twelve|a few|a couple of|couple of|few) (days|weeks|months|years|day|week|month|year|fortnight) (ago|back)';
export const historyCues: readonly ScopeCue[] = [
  // "started about three weeks ago": since when, of what there is.
  { say: [`(started|began|starting|came on|set in) ${since}`, `(started|began|starting|came on|set in) (last (week|month|spring|summer|autumn|winter|year)|in [the] ${seasons})`], means: 'before', looks: 'back', kind: 'pseudo' },
  // "quidding this last month": of now.
  { say: ['(this|these|the|over the|for the|in the|for this) (last|past) [(few|couple of|two|three|four|six|eight|ten)] (day|days|week|weeks|fortnight|month|months|winter|summer|spring|autumn)'], means: 'before', looks: 'back', kind: 'pseudo' },
  { say: ['[again] (like|as) [(it was|he had|she had|we saw|we had)] (last (time|year|visit)|before)', 'as a (three|four|five|six|seven) year old'], means: 'before', looks: 'back', kind: 'pseudo' },
  { say: ['i [(strongly|do|would|rather)] (suspect|fancy) [(it is|that is|there is|this is)] [(a|an)]', '(strongly|highly) (suspect|suspicious of|suspicious for) [(a|an)]', 'i am (wondering|worried) (about|if) [(there is|it is)] [(a|an)]'], means: 'suspected', looks: 'forward' },
  { say: ['used to [(have|be|get|suffer from|suffer with)]', 'once had [(a|an)]', 'years back', 'historically', 'as a (foal|youngster|yearling|two year old)', 'in his (younger days|youth)', 'in her (younger days|youth)', '(last|previous) (time|year|visit|month|week) (he|she|it|there) (had|was|were) [(a|an)]'], means: 'before', looks: 'forward' },
  { say: ['[been there] (first (seen|noted|noticed|spotted|found|recorded|picked up|appeared)|since) [(in|at|on|a|the)] [(last|two|three|four|six)] [(year|years|time|visit|month|months|week|weeks|spring|summer|autumn|winter)] [(ago|back)]'], means: 'before', looks: 'back', kind: 'pseudo' },
  { say: ['gone [(completely|altogether)]', 'gone (now|today)', '(all|since|long) gone [now]', '(closed|healed) (now|today|over|up)', 'now (closed|healed|gone)'], means: 'before', looks: 'back' },
  { say: [`last (month|week|spring|summer|autumn|winter|fall|season|christmas|easter)`, `(back in|earlier in|during) [(the|last)] ${seasons}`, '(months|weeks|days|ages) ago', 'a (while|long time|year|month|week|fortnight|few (days|weeks|months|years)|couple of (days|weeks|months|years)) (ago|back)', 'some time ago', '(earlier this|the other|earlier in the) (year|month|week)', 'the year before [last]', '[long] since (healed|gone|resolved|cleared|settled)', '(has|have) [(now|all|since)] (settled|gone) [(down|away)]', '(gone|settled|calmed) down', 'gone away', '(that|it|he|she) (has|is) (now|since) stopped', '(that|which) (has|is) stopped', 'stopped (now|since)', '(no|not) (any more|anymore)', 'at one (time|point)', 'in the past', 'when he was (young|younger|a foal)', 'when she was (young|younger|a foal)'], means: 'before', looks: 'back' },
  { say: ['(at|on|from) (the|his|her|our|my) (last|previous) (visit|exam|examination|appointment|dental|check)', '[(is|are)] no longer (there|present|visible|evident|palpable|to be (seen|felt|found))'], means: 'before', looks: 'back' },
];

/** Behind a finding that was ruled out: it was ruled out on that day. */
export const onThatDay = /^(?:last (?:time|year|visit|month|week|spring|summer|autumn|winter)|(?:[\w ]+ )?(?:days|weeks?|months?|years?) ago|a while (?:back|ago)|(?:at|on|from) \w+ (?:last|previous) \w+|in the past|previously)$/;

/** Beside work: it was done on another day. */
export const workOfThePast: readonly string[] = [
  'last (year|time|visit|month|week|summer|winter|autumn|spring)', `last ${months}`, `in ${months}`,
  '(in|over|during|through|back in) [the] [(early|late|end of the|middle of the)] (spring|summer|autumn|winter|fall)', '(at|before|after|over|around) (christmas|easter|new year)', 'at the back end', `(this|last|on) ${days}`, 'in (twenty|two thousand)',
  '(year|month|week)(s) (ago|back)', 'previously', 'yesterday', '(rasped|floated|done|seen|treated|dressed|scaled) (recently|lately|not long ago|a while (ago|back))', 'recently (rasped|floated|done|treated|dressed|scaled)', 'the other (day|week)',
  '(at|by) the (clinic|hospital|surgery|university)',
  '(last|previous|old|other) (dentist|vet|edt|owner|person|one|man|chap|fella|fellow|lad|guy|lady|woman|technician)',
  'as a (foal|yearling|youngster|(two|three|four) year old)', 'when (he|she) was (a|two|three|four|five|six|young|younger)',
  'before (i|we|she|he|they|you) (had|got|bought) (him|her|it)',
];

/** Behind "used to ...": it has ended. */
/** Right before a size or a grade: it is of another day, or of today. Small words may stand between. */
const small = '(?: (?:only|about|around|just|a|an|at|it|grade|the|maybe))*';
const then = 'last (?:time|year|visit|month|week|spring|summer|autumn|winter)';
export const oldBefore = new RegExp(`(?:^|\\b)(?:was|were|been|used to be|up from|down from|from|${then}|previously|before)${small}$`);
export const newBefore = new RegExp(`(?:^|\\b)(?:now|today|this time|down to|up to|gone to|currently)${small}$`);
export const oldAfter = new RegExp(`^(?:(?:at|in|on|the|it|was|were|when|but) )*(?:${then}|before|previously|(?:\\w+ )?(?:week|month|year)s? (?:ago|back)|in the (?:spring|summer|autumn|winter))\\b(?! (?:it |that |he |she )?(?:was|had))`);
export const newAfter = /^(?:(?:as|of|it|is|are) )*(?:now|today|this time|this visit|at present)\b/;
/** What was there before is there today. */
export const stillThere = /\bstill (?:there|here|present|got|has|have|showing|open|loose|going)\b|\b(?:is|are|has|have) still\b|\b(?:back|again|same) (?:today|now|again)\b|\b(?:got|has|have) (?:it|them|one|some) (?:again|back|today|now|still)\b|\b(?:it|they) (?:is|are) back\b/;
/** ... unless it went. */
export const sinceThen = /\b(?:gone|healed|none|no|nothing|not|never|resolved|cleared)\b/;
/** It has gone by itself, and the speaker says that it is gone now. */
export const goneNow = /\b(?:has|have|is|are|all) (?:closed|healed|gone|resolved|cleared|settled)(?: \w+)? (?:now|today)\b|\b(?:closed|healed|gone|resolved|cleared|settled)(?: (?:up|over|down|away|completely))? (?:now|today)\b|\bnow (?:closed|healed|gone|resolved|cleared)\b/;
/** At the end, behind what was there on another day: there is none of it now. */
export const goneToday: readonly string[] = [
  '(nothing|none) [(there|here|in it|on it|in there|at all)] (now|today|this time)', 'nothing to (see|feel|find|show) [(there|for it)] (now|today|this time)',
  '(is|all|is all) clear (now|today|this time)', 'clear (now|today|this time)', 'no sign (now|today|this time)',
  '(now|today|this time) (there is|there are|is|he has|she has) (none|nothing|not|not one|not any) [(there|at all)]', '(now|today|this time) (none|nothing) [(there|at all)]', '(now|today|this time) (it is|is) [all] clear',
];
/** Behind work of another day: it is there again. */
export const thereAgain: readonly string[] = [
  '(it|that|they) (is|are|has|have) [(all|already|now)] (back|come back|grown back|returned|built up|built back up|grown|come) [(again|now|already|today)]', "that's [(all|already|now)] (back|come back|grown back|built up) [(again|now|already|today)]",
  '(there is|he has|she has|it has) [got] (one|another|another one|a new one) [there] (now|again|today|back)', 'there is (another|another one|a new one) [there]',
];
export const wasThen = new RegExp(`\\b(?:had|was|were|used to|last (?:time|year|visit|month|week|spring|summer|autumn|winter|check|exam)|${seasons.replace(/\(/g, '(?:')})\\b`);
export const endedSince = /\b(?:not (?:any ?more|now|today|this time|these days|since)|(?:none|nothing|no sign(?: of (?:it|them))?) (?:now|today|this time|there now)|no longer|(?:has|have) stopped|stopped (?:now|since)|(?:does|do|is|are) not(?: \w+){0,2} (?:now|any ?more|these days)|(?:does|do) not now)\b/;

/** Beside "sedation": it was agreed to, asked for, planned or thought of; nothing says that it was given. */
export const sedationToCome = /\b(?:will|would|shall|should|might|may|could|can|if|unless|plan|plans|planned|planning|next (?:time|visit|week|month|year)|in future|future|book|booked|booking|schedule|scheduled|arrange|arranged|going to|about to|ready (?:for|to)|needs?|needing|require[sd]?|requires|have to|has to|want|wants|wanted|like|likes|to be|due|recommend\w*|advise\w*|suggest\w*|discuss\w*|talk\w*|consider\w*|think|thinking|ask\w*|option|offer\w*|quote\w*|before|wait\w*|until|till|in case|agree[sd]?|agreed|agrees|consent\w*|permission|happy (?:for|with|to)|okay with|ok with|fine with|tomorrow|to sedate|on (?:the|his|her|their) way|coming|possible|possibly|probably|maybe|perhaps)\b/;
/** "will take that out under sedation": not yet. */
export const underToCome = /\b(?:will|going to|to be|needs?|wants?|planned|planning|booked|due|coming (?:back )?to|is to)\b.*\bunder (?:\w+ )?sedat/;
/** "heart rate forty before sedation": when it was counted. */
export const countedBefore = /\b(?:heart|pulse|beats|bpm)\b.*\b(?:before|prior to|pre|ahead of)(?: the| any| his| her)? sedat/;
/** "could have done with some sedation", "if he had been sedated": there was none, and nobody asks. */
export const sedationMissed = /\b(?:could|would|should) have (?:done with|liked|used|been (?:better|easier|happier) (?:with|under|for))\b.*\bsedat|\bif (?:\w+ )?(?:had|'d) (?:been |had )?(?:\w+ )?sedat/;
/** None was given: before the word ("never needed any sedation"), behind it, or by other words. "Never felt the sedation", "never been sedated before" say that some was. */
export const notSedated = /\b(?:no|not|without|un)\b.{0,12}\b(?:any )?sedat|\bnever (?!felt|noticed|knew|minded|again)(?:\w+ ){0,4}sedat(?!\w+ (?:before|topped))|\bsedation (?:was |is )?never (?:needed|used|given|required|necessary)|\b(?:managed|done|did (?:him|her|it|them)|went|worked|fine|grand|ok|okay|good) without(?: (?:it|any|sedation))?(?: today| this time)?$|\bunsedated\b|\bsedated\b.*\bnot (?:today|this time)\b|\bsedation (?:was |is |has been )?(?:not|declined|refused)|\bawake\b|\b(?:declined|refused|did not want|does not want|(?:said|says) no to|turned down|against)\b.{0,20}\bsedat|^no sedation\b/;
export const noTopUp = /\b(?:no|not|without|never)\b.{0,14}\btop(?:ped)? ?ups?\b/;
/** "can't be examined without sedation", "won't be doing her again without": why it was not done or how it will be, and nothing about what was given. */
export const onlySedated = /(?:^|\b(?:can|could|will|would|shall|should) (?:not|never)\b.*|\b(?:unable|able) to\b.*|\bnever again\b.*|\bnot (?:\w+ ){0,3}(?:again|next time) )\bwithout (?:a |any |some )?sedation(?: (?:again|next time))?$/;
/** Said outright, whatever the reason that stands beside it. */
export const noSedation = /\b(?:no|without(?: any)?) sedation\b/;
/** Beside an agent: it is not the first of it. */
export const sedationAgain = /\b(?:a (?:drop|bit|touch|little|tad|small bit) more|(?:a )?(?:second|third|further) (?:dose|lot|shot|go|bit|drop|jab)|another (?:dose|lot|shot|go|bit|drop|jab|half|quarter|point|nought|zero|one|two|\w+ (?:mil|mils|ml|mg|milligrams?|micrograms?))|again (?:at|after|later)|more (?:of (?:the|it)|detomidine|romifidine|xylazine|butorphanol))\b/;
/** Beside it: it was given after all. */
export const sedationGiven = /\b(?:was|were|has been|have been|had been|got|gave|given|gives|administered|injected|went in|on board|under|topped|sedated (?:with|by|at|today|and|this morning)|standing sedation used|had (?:a|some|his|her|light|standing)? ?sedat\w+|already)\b/;
/** Beside an agent and its dose only these say that it is still to come. */
/** "he was sedated last time": of another day; whether any was given today is asked. */
export const sedatedBefore = /\b(?:last (?:time|year|visit|month|spring|summer|autumn|winter)|(?:years?|months?|weeks?|days?) ago|yesterday|the other (?:day|week)|last night|for the (?:farrier|clipping|clippers|shoeing)|previously|in the past)\b/;
export const plannedDose = /\b(?:will (?:need|give|use|be)|would|plan|plans|planned|planning|next (?:time|visit)|book|booked|going to|should (?:need|give|use)|recommend\w*|suggest\w*|could (?:give|use|try))\b/;

/** Before a medicine: the horse has it already, whoever gave it ("been on bute since Friday"). */
export const agentTaken = /\b(?:finished|finishing|completed|(?:end|middle) of)(?: (?:his|her|the|a|course|of))*$|(?:^|\b(?:is|was|been|being|be|still|stays?|kept|keeps?|currently|already|only|just|came|come|coming|finished|off|he|she) )(?:on|off)(?: (?!top|with)\w+){0,4}$/;

interface Around { readonly before: RegExp; readonly after: RegExp }
/** Beside the name of a drug, in its own clause: it was refused; it was not given; it is what is usual, of another day, or only thought of. */
export const agentRefused: Around = {
  before: /\b(?:declined|refused|did not want|does not want|said no to|would not have)\b[^,]*$/,
  after: /^(?:was |were )?(?:declined|refused)\b/,
};
export const agentUnused: Around = {
  before: /(?:\b(?:no|not|never|without|nil|instead of|rather than|out of|need(?:ed|s)? no|not (?:had|given|used|need(?:ed)?|having|on|want(?:ed)?|getting|take|taken|give|use) (?:any|the|his|her)?)|\bnot (?:\w+ ){0,3}(?:any|the|a|his|her|with))(?: (?:any|the|of|more|other|further|his|her|need for|call for|use of))*$|\b(?:did|was|has|have|had|could|would|were|need) not(?: \w+){0,3}$|\bnever (?:\w+ ){0,2}(?:gave|used|needed|had|drew up)(?: (?:any|the|his|her|more))*$|\b(?:was|were) (?:going|about|meaning) to (?:give|use|try|draw up)(?: (?:him|her|it|some|the|a bit of))*$/,
  after: /^(?:was |is )?(?:left|still) (?:in|on|at) (?:the )?(?:car|van|truck|jeep|box|bag|yard|house|surgery|bottle|syringe)\b|^(?:was |were |is )?(?:not|never)(?: \w+)? (?:given|used|needed|required|necessary|drawn up|touched|wanted|today|this time)\b|^(?:drawn up |ready |on hand )?but (?:not|never) (?:given|used|needed)\b|^(?:(?:was|were) )?(?:not|un)(?:needed|used| needed| used)\b/,
};
export const agentOtherwise: Around = {
  before: /\b(?:usually|normally|generally|typically|always|tends? to|used to|often|sometimes|if|allergic to|reacts? to|reacted to|bad reaction to|in case|last time|last year|previously|in the past|owner has|ask(?:ed)? (?:the )?(?:vet )?(?:for|about)|would (?:have|need|use|want|like)|might|may|could (?:have|use|try)|thinking of|talk(?:ed|ing) about|offered|would rather(?: try| have| give)?)\b[^,]*$/,
  after: /^(?:did|does|has|would|will) not (?:agree|suit)\b|^(?:(?:was |were )?offered|usually|normally|last time|last year|last (?:week|month|visit|spring|summer|autumn|winter)|yesterday|for the (?:farrier|clipping|clippers|shoeing)|(?:\w+ ){1,2}(?:days|weeks|months|years) ago|in the past|before(?! (?:i|we|you|he|she|it|they|the|starting))|previously|as a rule|if (?:he|she|needed|we)|next time|another (?:day|time))\b/,
};

/** "Rasped six months ago", "last floated in the spring", at a phrase's start: work of another day, to where it is said when. */
export const doneThen = /^(?:(?:so|and|well|right|now) )*(?:(?:he|she|it|they|this one|(?:his|her|the) (?:teeth|mouth)) (?:is |was |were |has |had |been |got )+)?(?:last |only |just )*(?:rasped|floated|done|seen|treated|filed|dentisted)(?: (?!(?:and|but|then|so|is|are) )[\w']+){0,6}? (?:(?:days?|weeks?|fortnight|months?|years?|while) (?:ago|back)|last (?:time|visit|year|month|spring|summer|autumn|winter|fall)|(?:in|over|back in) (?:the )?(?:spring|summer|autumn|winter|fall|new year|january|february|march|april|may|june|july|august|september|october|november|december))(?=$| (?:and|but|yet|points|hooks|there)\b)/;
/** Behind "points back": they have come again, and there. */
export const backThere = /^(?:(?:already|again|now|today) )*(?:(?:on|at|in|all) |$)/;
/** All of a part: gone round by feel. */
export const feltRound = /^(?:(?:so|and|right|then|now|i|we|have|just) )*(?:been|went|gone|going) (?:back |all )*(?:round|around|over) (?:it |them |everything |the lot |him |her |all )*(?:again )?(?:with|by) (?:(?:my|the|a) )?(?:fingers?|hands?|thumb|finger ends|fingertips?)(?: again)?$/;
/** How far it could be felt or seen. */
export const asFarAs = /^(?:(?:so|and|right|then|now|all|everything|well) )*(?:that |what |as far as )(?:i|we) (?:can|could|was able to|managed to) (?:get to|reach|feel|get at|get round|get)(?: back)?(?: (?:is|are|it is|that is|they are|feels))?(?= )/;
/** What was felt then, and nothing else. */
export const smoothThere = /^(?:(?:it is|it's|that is|that's|they are|everything is|is|and|all|nice|lovely|grand|very|now|feels|feeling) )*smooth(?: (?:now|all|the|way|round|along|today|again|enough|as|glass))*$/;
