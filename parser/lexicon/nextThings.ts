/** What comes next, said in few words: who sees it, when, with whom; each as a pattern of the whole part. */
import { ofTheHorse } from './advising.ts';
const lead =
  "(?:(?:and|so|then|now|well|right|okay|just|also|but|please|will|i will|we will|i am going to|maybe|perhaps|probably|definitely|otherwise|else|meantime|meanwhile|in the meantime|i think|i reckon|i would say|i'd say|we will say|say|call it|make it|happy to|i am happy to|(?:i|we) (?:would|'d|should)(?: really| rather)?(?: (?:like|want|love|prefer|get))?|told (?:mum|dad|him|her|them|the (?:owner|groom|rider|yard|lad|girl))(?: that)?|i (?:have )?told (?:mum|dad|him|her|them|the (?:owner|groom|rider|yard|lad|girl))(?: that)?|that|owner to|(?:the )?(?:owner|mum|dad|groom|she|he|they) (?:is|are|will|is going|are going)(?: to)?|i have (?:asked|told|got) (?:her|him|them|mum|dad|the owner) to|(?:advised|suggested|suggest|recommended|recommend|offered|advise)(?: her| him| them| (?:the )?owner| that)?(?: to)?|(?:not )?urgent(?:ly)?|(?:you|they|she|he) (?:need|needs|want|wants|should|ought|had better|have|has)(?: to)?|worth|better|best|let us|let's|to|asked (?:her|him|them|mum|dad|the owner) to) )*";
const number = '(?:a|an|one|two|three|four|five|six|seven|eight|nine|ten|twelve|eighteen|\\d+|a couple of|couple of|a few|another|every|every other)(?: (?:or|to|and a half|and a bit|odd|good) (?:so )?(?:two|three|four|five|six|seven|eight|nine|ten|twelve)?)?';
const month = '(?:january|february|march|april|may|june|july|august|september|october|november|december)';
const seasons = `(?:(?:early |late |mid |the |next |this )*(?:spring|summer|autumn|fall|winter|back end|new year|christmas|easter|${month}|week|month|year|season|weekend))`;
const unit = '(?:days?|weeks?|fortnights?|months?|years?|monthly|weekly|yearly)(?: time)?';
/** When: "in eight weeks", "for may", "six monthly", "a year from now". */
const ordinal = '(?:first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|eleventh|twelfth|thirteenth|fourteenth|fifteenth|sixteenth|seventeenth|eighteenth|nineteenth|twentieth|twenty (?:first|second|third|fourth|fifth|sixth|seventh|eighth|ninth)|thirtieth|thirty first|\\d+(?:st|nd|rd|th))';
const weekday = '(?:next )?(?:mon|tues|wednes|thurs|fri|satur|sun)day';
/** A day of the month or the week, kept as it was said. */
export const dayIn = new RegExp(`\\b(?:(?:on|for|by|till|until|from) )?(?:${weekday}(?: the ${ordinal})?|the ${ordinal}(?: of \\w+)?)\\b`);
export const whenSay = `(?:(?:in|at|for|by|about|around|within|after|after another|another|every|roughly|say|till|until|come|from|on|the) )*(?:${number} (?:more )?${unit}|fortnight|${seasons}|${weekday}|(?:the )?${ordinal}(?: of ${month})?|six monthly|yearly|annually|once a year|twice a year|(?:the )?(?:usual|same) time next year|same time next year)(?: (?:from (?:now|today|here)(?: on)?|or so|at (?:most|least|the (?:latest|most|outside))|tops|max|all being well|i think|i'd say|please|then|as usual|again|or sooner|otherwise|myself|after that))*`;
const him = '(?:him|her|it|them|this one|that one|this|that|the (?:horse|mare|pony|gelding|lad|mouth|rest|lowers|uppers|gap|other side|teeth)|me|us|you)';
const teeth = '(?:tooth|teeth|gap|gaps|pocket|cap|caps|hook|hooks|ulcer|cut|socket|hole|lump|swelling|mass|growth|eye|eyes|cheek|jaw|sinus|nose|nostril|gum|gums|tongue|mouth|lip|lips|fracture|break|crack|abscess|infection|discharge|bleed|bleeding|blood|murmur|heart|weight|weight loss|cough|cushings|sarcoid|tract|smell|glands?|bar|bars|palate|face|joint|pain|chewing|headshaking|head shaking|wolf|teeth|canine|rest|exam|check|x rays?|radiographs?|films|ct|scan|scope|scoping|biopsy|bloods|extraction|sedation|filling|one)';
const what = `(?:${him}|.*\\b${teeth}\\b.*|.*\\b(?:oh|hundred|ten|eleven)\\b.*)`;
const forIt = `(?:for|about|with|to|at|on|over|of|before|if|when) ${what}`;
const vet = "(?:(?:the|a|your|her|his|their|my|our|another|equine|own|dental|horse|usual) )*(?:vet|vets|veterinarian|practice vet)";
const hospital = '(?:(?:the|a|an|your|her|nearest|equine|dental|referral|vet|vets|veterinary) )*(?:hospital|clinic|specialist|referral|referral centre|surgeon|university|uni|vet school|dental vet|specialist dentist)';
const soon = '(?:today|tonight|tomorrow|straight away|asap|urgently|soon|first|next|(?:this|next) week|on (?:mon|tues|wednes|thurs|fri|satur|sun)day|when convenient|when (?:she|he|they|you) can|at some point|not urgent(?:ly)?|no rush|before i come back|out|in|over)';
const looks = '(?:look at|see|check|check over|examine|have a look at|take a look at|x ray|radiograph|image|scope|biopsy|aspirate|sample|swab|test|test for|bleed|take bloods|take blood|run bloods|deal with|sort|sort out|take on|take (?:that|this|it) on|treat|has a look at|takes a look at|looks at|sees|checks|seeing|looking at|checking|having a look at|testing(?: for)?|scoping|x raying|assess|review|scan|ultrasound|lance|drain|put a (?:needle|scope|camera) in(?:to)?|investigate|get to the bottom of|follow up|advise on)';

export type NextAction = 'recheck' | 'refer-to-veterinarian' | 'monitor' | 'advise-owner' | 'send-report' | 'rest-from-bit';
export interface NextForm {
  readonly action: NextAction;
  readonly form: RegExp;
  /** Only where other parts of the same breath say what comes next. */
  readonly beside?: true;
  /** Before all rules that take words to be kept. */
  readonly early?: true;
  readonly state?: 'done';
  /** Of the whole breath, with what it is for. */
  readonly whole?: true;
  /** What is to be looked at was said in the line before. */
  readonly pointing?: true;
}
const all = (say: string): RegExp => new RegExp(`^${lead}(?:${say})$`);
/** What the speaker will do himself is no advice. */
const leadAsked = lead.replace('will|i will|we will|i am going to|', '');
const ask = (say: string): RegExp => new RegExp(`^${leadAsked}(?<text>${say})$`);

const round = '(?:every (?:\\w+ )?(?:weeks?|months?|years?)|(?:three|four|six|nine|twelve) monthly|twice a year|once a year|yearly|annually)';
const signs = '(?:quidding|weight|weight loss|swelling|discharge|smell|bleeding|blood|head ?shaking|dropping|drooling|choke|colic|heat|pain|soreness|eating|chewing|pus|infection|reaction|lameness|temperature)';

export const nextForms: readonly NextForm[] = [
  { action: 'recheck', whole: true, form: all(`(?:get|put|have|stick|pop|book|add) ${him} (?:back |down |up )*(?:on|in|into|onto) (?:the|my|our) (?:list|books?|diary|schedule|system|rota|calendar|visit list)(?: again)? ${whenSay}`) },
  { action: 'recheck', whole: true, form: all(`(?:get|have) ${him} (?:(?:booked|seen|done|looked at|checked|back) )(?:on |in |again )*${whenSay}`) },
  { action: 'recheck', whole: true, form: all(`(?:pencil|put|book|stick|pop|get|have|see|back|down)(?: (?:${him}|in|down|back|up))* ${whenSay},? so (?:that )?(?:i|we) can .+`) },
  { action: 'recheck', whole: true, form: all(`(?:(?:do|see|go|go with|have|want|keep|be|get|recommend|book|check)(?: ${him})? (?:on |at |seen |done |checked |looked at |to )*)?${round}(?: (?:visits|checks|dentals))?(?: (?:rather than|instead of|not|at (?:his|her|its|that|their)|with (?:him|her|that|those|this|his)|now|given|because|for (?:him|her)) ?.*)`) },
  { action: 'recheck', whole: true, form: all(`(?:honestly |really |to be honest )*(?:(?:a )?(?:check|visit|look|go|rasp|float) )?${round} (?:is|are|would be|will be|should be|ought to be|will|would|should)(?: be)? (?:plenty|enough|ample|grand|fine|loads|often enough|do|do (?:him|her|it|this one)(?: (?:grand|fine|rightly|nicely))?|all (?:he|she|it|this one) needs)(?: (?:often|now|from (?:now|here)(?: on)?|i think|i would say|really|(?:for|with) (?:him|her|it|this one|that one|this (?:horse|pony|mare|fella|lad|old \\w+))|at (?:his|her) age))*`) },
  { action: 'monitor', whole: true, form: all(`(?:monitor|monitoring|watch (?:him|her|it)|keep an eye on (?:him|her|it)|keep watching|keep monitoring)(?: (?:him|her|it|at home))* for (?:any |signs of |more |further |new )*(?:\\w+ )?${signs}\\b.*`) },
  // A length of time, and for what.
  { action: 'recheck', beside: true, early: true, form: all(`(?:(?:${him}|he is|she is|he|she|the dentist is|dentist is|dentist|due|due again|again|back|full exam|the usual|(?:(?:he|she|it) is )?on|(?:the|that|this|his|her) ${teeth}|mouth|teeth) )*${whenSay}(?: (?:visits|checks|dentals))?(?: (?:for|with|till|until|to|in all|then|unless|if|so) .*)?`) },
  { action: 'recheck', form: all(`(?:i |we |i am |we are |i will |we will |will |be |come |pop |call |drop |swing |nip |to |going to )*(?:back|see|seeing|do|doing|recheck|check|look at|look in|have (?:a|another) look(?: at)?|revisit|redo|finish|finish off|get to|book|booked|booking|book in|booked in|pencil|pencilled|put|down|diary|catch|visit|due|reassess|review|flush|reflush|probe|round|call|pop in|call in|call back)(?: (?:${him}|again|back|in|down|up|over|out|due|to (?:check|see|look at|do|finish|flush|probe|recheck|look)|a recheck|a check|a visit|a look|off|round))* ${whenSay}(?: (?:for|with|to|and see|till|until|so) .*)?`), beside: true },
  { action: 'recheck', form: all(`(?:(?:leave|leaving|rest|let) ${him} (?:be |alone )?(?:for )?|next (?:look|check|visit|flush|exam|dental|appointment|recheck)(?: is| due)? )${whenSay}`), beside: true },
  // Who is to see it.
  { action: 'refer-to-veterinarian', form: all(`${vet}(?: (?:is|will|can|should|needs|wants|ought|has|have|to be|please|there))*(?: ${soon})* (?:for|about) ${what}(?: ${soon})*`) },
  { action: 'refer-to-veterinarian', form: all(`${vet}(?: (?:is|will|can|should|needs|wants|ought|has|have|is coming|coming out|coming|booked|booked in|due|out|please))*(?: ${soon})*(?: to)? (?:be |come and |come |have to |want to |need to )*${looks}(?: (?!extract)(?:${him}|.*))?`) },
  { action: 'refer-to-veterinarian', beside: true, form: all(`${vet}(?: ${soon})+|${vet} (?:if|when|unless) .+|if .+ (?:the )?vet|(?:.* )?(?:to be |is |one |a job |wants |needs )*for (?:the|your|her) vet`) },
  { action: 'refer-to-veterinarian', form: all(`(?:ring|ringing|call|calling|phone|phoning|text|speak to|talk to|speaking to|tell|telling|ask|asking|let|have a (?:word|chat) with|get on to|get onto|get hold of|contact|email|message|mention (?:it|that|this) to|run (?:it|that|this) past|raise (?:it|that|this) with|show (?:it|that|this) to) ${vet}(?: (?:know|myself|herself|himself|${soon}))*(?: (?:about|know about|regarding|on|over|for|to) (?:${him}|.*\\b${teeth}\\b.*))?(?: (?:${soon}|myself|herself|himself))*(?: (?:if|when|unless) .*)?`), beside: true },
  { action: 'refer-to-veterinarian', form: all(`(?:ring|ringing|call|calling|phone|phoning|text|speak to|talk to|speaking to|tell|telling|ask|asking|let|have a (?:word|chat) with|get on to|get onto|get hold of|contact|email|message) ${vet}(?: (?:know|myself|herself|himself|${soon}))* (?:about|know about|regarding|over) (?:${him}|.*\\b${teeth}\\b.*)(?: (?:${soon}|myself|herself|himself))*`) },
  { action: 'refer-to-veterinarian', form: all(`(?:book|get|put|send|refer|referring|referred|going|go|off|sending|take)(?: ${him})*(?: (?:in|into|down|up|over|off|on|back|him|her|it))*(?: (?:with|to|at))? (?:${vet}|${hospital})(?: (?:${forIt}|to ${looks}.*|${soon}))*`) },
  { action: 'refer-to-veterinarian', form: all(`${hospital} (?:${forIt}|to ${looks}.*)`) },
  { action: 'refer-to-veterinarian', form: all(`(?:.*\\b(?:needs?|wants?|is|to be|should be|has got to be|has to be|ought to be|must be|got to be|have|get|having|getting) )?(?:.* )?(?:seen|looked at|checked|examined|x rayed|scoped|assessed|treated|dealt with|sorted|taken on|imaged|scanned)(?: (?:soon|again|properly|first|out|by))* by (?:${vet}|${hospital})(?: ${soon})*`) },
  // Of what was found in the line before.
  { action: 'recheck', pointing: true, form: all(`(?:(?:a )?(?:bit|little|touch|couple of mil) )?(?:take )?(?:some )?more (?:off|of|out of|work on) (?:that|it|this|them|those)(?: one)? ${whenSay}`) },
  { action: 'recheck', pointing: true, form: all(`(?:we will |i will |will )?(?:take|do|have) (?:a bit |some |a little |a couple of mil )?(?:more|another go|the rest|another (?:bit|couple of mil|mil)) (?:off|of|out of|at|with|on) (?:that|it|this|them|those)(?: one)? ${whenSay}`) },
  { action: 'recheck', pointing: true, form: all(`(?:give|leave|giving|leaving) (?:it|that|them|this|those)(?: one)?(?: be| alone)? ${whenSay}(?: (?:and|then) (?:then )?(?:see|look|check|we will see|i will look|see how .*|look again|reassess|do (?:it|that)))?`) },
  { action: 'recheck', pointing: true, form: all(`(?:that|this)(?: one)? (?:will )?(?:really )?(?:wants?|needs?|could do with) (?:\\w+ing |a \\w+ |another \\w+ |to be \\w+ )(?:again |out |over |by feel )*${whenSay}(?: .*)?`) },
  { action: 'refer-to-veterinarian', form: all(`(?:want|have|get|get|having|getting) (?:that|it|this)(?: one)? (?:looked at|seen|checked|examined|assessed|scanned|investigated)(?: (?:properly|further|soon|today|tomorrow|this week))*,? (?:by|with|from) .*(?:vet|hospital|specialist|someone who).*|(?:want|have|get) (?:that|it|this)(?: one)? (?:looked at|seen)(?: properly)? vet\\b.*`) },
  { action: 'refer-to-veterinarian', form: all(`(?:that|this|it)(?: one)? (?:really )?(?:wants?|needs?|could do with|should have|will need|will want|needs to have) (?:a )?(?:biopsy|biopsying|ct|ct scan|scan|scanning|ultrasound|second opinion|specialist|hospital|proper vet exam|swab|swabbing|culture|fine needle aspirate)(?: .*)?|(?:a )?(?:biopsy|ct|ct scan|mri|scan|ultrasound|second opinion)(?: scan)?(?: (?:for|of|on) .*)? (?:advised|recommended|suggested|needed|required)(?: .*)?|(?:advised|recommended|recommend|suggested|suggest|offered|needs?|wants?) (?:a |an )?(?:biopsy|ct|ct scan|mri|ultrasound|second opinion)(?: scan)?\\b.*`) },
  { action: 'recheck', beside: true, form: all(`(?:(?:it|he|she) )?(?:will )?(?:really )?(?:wants?|needs?|could do with) (?:\\w+ing |to be \\w+ed )(?:again |out |over )*${whenSay}(?: .*)?`) },
  { action: 'refer-to-veterinarian', form: all(`(?:a |an )?(?:full |proper )?vet(?:erinary)?s? (?:check|check up|exam|examination|visit|appointment|opinion|assessment|work up)(?: (?:for|of|on|about|over|with|before|first) .+)?(?: (?:advised|recommended|suggested|needed))?`) },
  { action: 'refer-to-veterinarian', form: all(`(?:bloods?|blood tests?|a blood test|blood test)(?: (?:for|to check for|to rule out) .+)?(?: (?:advised|recommended|suggested|needed))?`) },
  { action: 'refer-to-veterinarian', state: 'done', form: all(`${vet} (?:(?:is|has|have|already|was|well|been|now|does) )*(?:(?:knows?|aware|told|informed)(?: (?:about|of) ${what})?|(?:seen|had a look at|looked at|examined|on the case with|dealing with|treating|looking into|on to) (?:it|that|this|them)(?: (?:already|and .*|before))?)`) },
  { action: 'refer-to-veterinarian', state: 'done', form: all(`(?:i |i have |we have |have |has |she has |owner has |already )*(?:rung|rang|called|spoken to|spoke to|emailed|messaged|texted|told|phoned|been on to|contacted|got on to) ${vet}(?: (?:already|myself|today|this morning|yesterday))*(?: (?:and (?:he|she|they)\\b.*|about ${what}(?: .*)?))`) },
  { action: 'refer-to-veterinarian', state: 'done', form: all(`${vet} (?:rung|called|phoned|told|informed|contacted|emailed|messaged)(?: (?:already|today|this morning|yesterday))* about ${what}(?: .*)?`) },
  { action: 'send-report', form: all(`(?:send|sending|sent|email|emailing|emailed|forward|forwarding|forwarded)(?: (?:the|a|some|my|this|these|those|copies of|a copy of|set of|her|his))* (?:pictures?|photos?|photographs?|x rays|films|images|charts?|reports?|letter|notes|write up|findings)(?: (?:of|from|on) .+)? (?:over |on |across |off |through )*to ${vet}(?: .*)?`) },
  // Watching.
  { action: 'monitor', beside: true, form: all(`(?:will |to |just )*(?:(?:monitor|monitoring|watch|watching)(?: (?:it|him|her|that|this|the rest|things|from there))?|(?:keep (?:an|a close|half an) eye on|watch|monitor|keep watching|keep checking) (?:that|this|the|his|her) (?:\\w+ ){0,3}?${teeth}(?: (?:on|in|at|under|by) .*)?)(?: (?:at home|herself|himself|for now|till then|until then|daily|weekly))*`) },
  { action: 'send-report', beside: true, form: all(`(?:a |the |full )*(?:chart|report|copy|notes|write up|letter|pictures|photos)(?: (?:will|to) (?:go|be sent))? (?:to|over to) (?:the |her |his |their |your )*(?:vet|vets|owner|mum|yard|trainer)(?: .*)?`) },
  { action: 'rest-from-bit', beside: true, form: all(`(?:he |she |it )?(?:can |may |to )?(?:go |be )?back in (?:the|a|his|her) (?:bit|bridle)(?: (?:on|from|after|by))? ${whenSay}`) },
  { action: 'rest-from-bit', beside: true, form: all(`(?:no bit|bitless|bit out|keep the bit out|leave the bit out|off the bit)(?: (?:in the meantime|till then|until then|meantime|for now|in his mouth|in her mouth|in))*`) },
  // Asked of the owner among other things that come next.
  { action: 'advise-owner', beside: true, form: ask(`(?:keep|keeping) (?:an|a close|a) (?:eye|watch) on (?:his|her|the|its) (?:droppings|weight|feeding|eating|dung|breathing|temperature|temp|chewing|appetite|water intake)(?: .*)?|(?:watch|mind) (?:his|her|the|its|that) (?:droppings|weight|feeding|eating|dung|temp|temperature|chewing|appetite)(?: .*)?|weigh(?:ing)? (?:him|her|it)\\b.*|weigh tape .*`) },
  { action: 'advise-owner', beside: true, form: ask(`${ofTheHorse}(?:soak|steam|damp|dampen|wet|feed|keep|put|give|rinse|flush|syringe|ring|call|text|phone|mind|watch|weigh|check|stop|cut|turn|bring|hand feed|avoid|use|try|change|switch|move|clean|wash|bathe|walk|lunge|ride|work|pick|look|feel|hang|drop|raise|lower|swap|stick) (?!.*\\bagain$).+|(?:wants?|needs?) (?:his|her|its|the) .*\\b(?:soaked|steamed|damped|wet|wetted|lowered|on the (?:floor|ground))\\b.*`) },
  { action: 'advise-owner', beside: true, form: ask(`(?:soak|wet|damp|steam) (?:everything|it all|the lot|all of it|his|hers)\\b.*|(?:keep|keeping|have) (?:the|his|her|all the|any) (?:hay|haylage|feed|chop|nuts|nets?|haynets?|hay nets?|feeds) (?:soaked|wet|damp|damped|short|low|down|soft|steamed|on the (?:floor|ground)|off the wall)\\b.*|(?:feed|hay|haylage|nuts|beet|chop|hard feed|everything) (?:soaked|wet|damped|steamed|dampened|softened)(?: down)?(?: .*)?|(?:soaked|steamed|soft|wet|sloppy|mushy|short) (?:feed|feeds|hay|food|nuts|mash|grass nuts|fibre|chop|stuff)(?: .*)?|(?:mash|mashes|slop|soup|grass|haylage|chop|short fibre|soup feeds)(?: only| not hay| no hay| instead of hay)?(?: (?:for|till|until) .*)?|haylage,? not hay|small feeds|salt water(?: .*)?|salt washes(?: .*)?|saline(?: .*)?|(?:flush|rinse) (?:it|that|the \\w+|them|that \\w+)(?: out)? (?:with|daily|once|twice|three|every|each|after|for|until|till|night|morning)\\b.*|(?:get|have|put|keep) (?:him|her|it) on(?:to)? (?:soaked |wet |some |the )*(?:hay|haylage|grass|grass nuts|mash|chop|nuts|fibre|beet|feed|bute|painkillers)\\b.*|no (?:hay|feed|food|apples|carrots|hard feed|long hay|nuts|treats|straw|work|riding)(?: .*)?|no changes? (?:to|of) (?:the |his |her )?(?:feed|hay|diet|bit)|back (?:to|on) (?:normal |his normal |full )*(?:feed|work|hay|riding)\\b.*|go back to (?:normal |full )*(?:feed|work|hay|riding)\\b.*|(?:work|ride|riding|ridden)(?: (?:from|on|again))* (?:tomorrow|the day after|monday|tuesday|wednesday|thursday|friday|saturday|sunday|next week|as normal)(?: .*)?|feed (?:tonight|tomorrow|in the morning|as normal)\\b.*|off work(?: (?:for|till|until) .*)|(?:keep|leave) (?:him|her|it|the muzzle|a muzzle) (?:in|on|stabled|off)(?: .*)?|let me know how (?:he|she|it) (?:goes|gets on|is|does)|(?:text|send|email) (?:me|us) (?:photos|pictures|a photo|a picture|a video)\\b.*|text me photos.*|give (?:him|her) (?:a |some )?(?:mash|soft feed|wet feed|soaked feed|grass|hay|bute)\\b.*|check (?:his|her|its|the) (?:mouth|breath|cheek|gum|feed)\\b.*|have a feel of .*|feel (?:it|that)\\b.*`) },
];

/** Says only when or how, and of nothing else. */
export const idleNext = /^(?:(?:and|or|but|so|then|well|right|okay) )*(?:(?:sooner|earlier|before then|before that|unless|if|all being well|all going well|touch wood|as usual|the usual|please|i think|i'd say|i would say|i reckon|that's (?:it|all|him|her|that|that one)|that is that|all good|lovely|grand|happy with that|happy days|thanks|(?:(?:what )?a |(?:he|she) is a )?(?:nice|good|lovely|grand|smashing|cracking|super|great|sweet|bonny|nice old|good old|lovely old) (?:horse|mare|pony|gelding|lad|girl|boy|fella|sort|mouth|chap|stamp|type|cob|old boy|old girl|job)s?|bless (?:him|her)|job done|(?:he|she) is (?:a )?(?:good|grand|lovely)\b.*|no rush|not urgent|nothing drastic|let (?:it|things|his mouth|her mouth|him|her) (?:settle|heal|rest|calm)|reassess|see how (?:he|she|it) (?:goes|gets on|is)|at (?:his|her) age)\b.*)?$/;
/** Where a breath may turn from one thing that comes next to another. */
export const joining: ReadonlySet<string> = new Set(['and', 'but', 'then', 'plus', 'so']);
const timeWords = [
  ...['day', 'days', 'week', 'weeks', 'fortnight', 'fortnights', 'month', 'months', 'year', 'years', 'weekly', 'monthly', 'yearly', 'annually', 'weekend', 'season'],
  ...['spring', 'summer', 'autumn', 'fall', 'winter', 'end', 'christmas', 'easter', 'january', 'february', 'march', 'april', 'may', 'june', 'july', 'august'],
  ...['september', 'october', 'november', 'december', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday', 'the', 'on'],
];
const whoWords = [
  ...['vet', 'vets', 'veterinarian', 'veterinary', 'hospital', 'clinic', 'specialist', 'surgeon', 'university', 'uni', 'referral', 'someone'],
  ...['bloods', 'blood', 'biopsy', 'biopsying', 'ct', 'mri', 'ultrasound', 'opinion', 'scan', 'scanning', 'swab', 'swabbing', 'culture', 'aspirate'],
];
const watchWords = ['monitor', 'monitoring', 'watch', 'watching', 'keep'];
/** Without one of its words a form of the table is not tried. */
export const wordsOfNext: Readonly<Partial<Record<NextAction, ReadonlySet<string>>>> = {
  recheck: new Set(timeWords),
  'refer-to-veterinarian': new Set(whoWords),
  monitor: new Set(watchWords),
};
/** Without one of these no single thing of the table is said: who is to see it, when, or what is watched. */
export const oneNextWords: readonly string[] = [...timeWords.filter((word) => word !== 'the' && word !== 'on'), ...whoWords, ...watchWords];
