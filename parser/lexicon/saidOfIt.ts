/** What is said of the thing found last, by itself and in words that name neither it nor its place; each with the plain words that say the same. */
import type { ConditionId } from './conditions.ts';

export interface SaidOfIt {
  /** Regular expressions over a whole part of a phrase; `side`, `size`, `number` are what they name. */
  readonly say: readonly string[];
  /** Of these findings; of any where it is left out. */
  readonly of?: readonly ConditionId[];
  /** `{where}` is where it is, `{name}` what it is, `{there}` its other side where `side` names that. */
  readonly plain: string;
}

const itIs = "(?:(?:and|but|so) )?(?:(?:it|that|this)(?: one)? (?:is |looks |feels |looks like )?|that's |looks like |is )?(?:just |only |really |definitely )?";
const gap: readonly ConditionId[] = ['diastema', 'periodontal-pocket'];
const inIt = '(?:in|stuck in|caught in|trapped in|packed in|left in) (?:it|there|here|that|that one)';
const firm = '(?:solid|firm|tight|steady|rock solid|sound|not moving|not loose|not going anywhere)';
const though = '(?: (?:though|anyway|however|enough|at least|as well|too))*';
const sized = '(?<size>smaller|bigger|larger|small|wee|little|tiny|big)';
const onSide = '(?:over |up |down )?(?:on|at) the (?<side>left|right)(?: side| hand side)?';

export const saidOfIt: readonly SaidOfIt[] = [
  { plain: 'looks old', say: [`${itIs}an? old one`, `${itIs}(?:been there|there) (?:a while|for years|years|for ages|ages)`] },
  { plain: 'looks fresh', say: [`${itIs}a fresh one`], of: ['fracture', 'ulcer', 'laceration'] },
  { plain: 'grade {number}', say: ["(?:(?:no|actually|so) )?(?:i (?:would |will |'d )?|you(?: would| could| 'd)? |we (?:would |will )?|would |will )?(?:call|make|say|give) (?:it|that|this)(?: one)?(?: about| probably)? a (?<number>one|two|three|four)"], of: ['infundibular-caries', 'peripheral-caries', 'caries', 'mobility', 'gingivitis', 'periodontal-disease', 'calculus', 'eotrh'] },
  { plain: 'bigger than last time', say: [`(?:(?:it|that|this)(?: one)? |that's )?(?:has |is )?(?:grown|got bigger|got worse|getting bigger|getting worse|come on|come on a bit|gone on)(?: (?:a bit|a lot|again))?(?: (?:since|from|on) (?:last (?:time|year|visit|autumn|spring|winter|summer)|before|then|i was last here))?`], of: ['hook', 'ramp', 'step', 'wave', 'periodontal-pocket', 'diastema', 'overlong', 'caries', 'infundibular-caries', 'peripheral-caries', 'gingival-recession', 'ulcer', 'lump', 'mobility'] },
  { plain: 'better', say: [`${itIs}(?:healing|healing(?: (?:up|over|well|nicely|away|fine|now))+|on the mend|settling(?: down)?|clearing up)`], of: ['ulcer', 'laceration', 'bit-injury', 'gingivitis', 'scar'] },
  { plain: 'no mobility on {where}', say: [`(?:(?:and|but) )?no (?:looseness|movement|mobility|give|wobble|play) (?:in|to) (?:it|that|this)(?: one| tooth)?${though}`, `(?:(?:and|but) )?(?:it|that|this|the tooth|tooth|that tooth)(?: one)? is ${firm}${though}`, `(?:(?:and|but) )?(?:neither (?:tooth|of them|one)|not either of them) (?:is |are )?(?:loose|moving|moves)`, `(?:(?:and|but) )?(?:both teeth|both of them|they|they both|the teeth)(?: are| is)?(?: both)? ${firm}${though}`], of: ['hook', 'ramp', 'step', 'overlong', 'fracture', 'infundibular-caries', 'peripheral-caries', 'caries', 'diastema', 'periodontal-pocket', 'food-packing', 'gingival-recession', 'gingivitis', 'cupped-out', 'pulp-exposure', 'displaced'] },
  { plain: 'no food packed {where}', say: [`(?:(?:and|but) )?(?:there is )?nothing (?:much )?${inIt}${though}(?: today| now)?`, '(?:(?:and|but) )?(?:it|that|this)(?: one)? is empty(?: today| now)?', "(?:and )?that's empty", '(?:(?:and|but) )?(?:it|that|this)(?: one)? is clean(?: inside| in there)'], of: gap },
  { plain: 'open', say: [`${itIs}(?:an )?open(?: one)? , (?:i|you|we) can (?:get|put|see|pass|fit) (?:.+ )?through(?: it)?`], of: ['diastema'] },
  { plain: 'valve', say: [`${itIs}(?:narrow|narrower|tight|tighter|closed)(?: (?:at|on) the)? (?:top|surface|chewing surface)(?: ,)?(?: so| and)?(?: it is| that's)? a valve(?: one)?`], of: ['diastema'] },
  { plain: 'no pulp exposed on {where}', say: ['(?:(?:and|but) )?(?:there is )?no pulp (?:exposed|exposure|showing|open|visible)(?: that i can see)?', '(?:(?:and|but) )?(?:the )?pulp is not (?:exposed|open|showing|involved)(?: (?:as )?far as i can (?:see|tell))?', '(?:(?:and|but) )?pulp not exposed'], of: ['fracture', 'cupped-out', 'caries', 'peripheral-caries', 'infundibular-caries'] },
  { plain: 'pain {where}', say: ['(?:(?:and|but) )?(?:it is |that\'s |he is |she is )?(?:a bit |quite |very )?(?:sore|painful|tender)(?: there)? when i (?:push|press|touch|tap|rock|move|probe)(?: on)?(?: it)?', '(?:he|she) (?:flinches|does not like it|minds it|resents it) when i (?:push|press|touch|tap|rock|move|probe)(?: on)?(?: it)?'], of: ['mobility', 'fracture', 'gingivitis', 'periodontal-pocket', 'ulcer', 'swelling', 'apical-infection', 'diastema', 'caries', 'infundibular-caries'] },
  { plain: 'no pain {where}', say: [`(?:(?:and|but) )?(?:it is |that's )?not (?:painful|sore|tender)${though}(?: when i (?:push|press|touch|tap|rock|move|probe)(?: on)?(?: it)?)?`, '(?:(?:and|but) )?(?:he|she) does not mind (?:it|that|me (?:touching|pushing|pressing)(?: on)? it)', '(?:(?:and|but) )?no pain (?:in|to|with|on) it'], of: ['mobility', 'fracture', 'ulcer', 'swelling', 'lump', 'caries', 'infundibular-caries', 'peripheral-caries', 'gingivitis', 'periodontal-pocket', 'diastema', 'scar', 'bit-injury', 'tension'] },
  { plain: 'rostral and caudal', say: [`${itIs}(?:in )?both (?:cups|infundibula|infundibulums|holes)`, 'front and back (?:cups|infundibula|one)?', 'front cup and back cup'], of: ['infundibular-caries'] },
  { plain: '{size} {name} on {there}', say: [`(?:(?:and|then|with) )?(?:an? |the )?${sized}(?: one)? ${onSide}(?= , )`, `(?:(?:and|then|with) )?(?:an? |the )?(?:other |another )?one ${onSide}`], of: ['hook', 'ramp', 'step', 'ulcer', 'periodontal-pocket', 'diastema', 'calculus', 'canine-present', 'wolf-tooth', 'laceration', 'lump', 'scar', 'mobility', 'fracture', 'caries', 'infundibular-caries', 'cupped-out'] },
];
/** "On the left it's only two mil": of the other side's, told by what is said of it. */
export const onThatSide = "(?:(?:and|but|so|then|now) )*(?:over |up |down )?(?:on|at) (?:the|his|her) (?<side>left|right)(?: side| hand side)?(?: ,)? (?:that's|that one's|(?:that one|this one|that(?! one)|it|they|those)(?: is| are| looks| look)?)(?= (?!as |a bit of )\\S)";
/** "On the left i can only feel it, so that one's blind": of the other side's, further on. */
export const furtherOn = "(?:(?:and|but|so|then|now) )*(?:over |up |down )?(?:on|at) (?:the|his|her) (?<side>left|right)(?: side| hand side)?(?= (?:i|we|you|it|that|there|,)\\b| ,)(?<between>.*?) , (?:(?:so|and|but|then) )*(?<pointing>that one's|that one is|that's|it is)(?= \\S)";
/** Said once more of what is the same. */
export const sameAsWell = "(?<kept>.* (?:is |are )?the same) , (?:(?:and|so) )?(?:that's|that is|it is|that one is|that one's|they are) (?:\\w+ )?\\w+ (?:as well|too|also)";
/** Such words say how much of the same, or which kind of it. */
export const ofTheSame = '(?:(?:only|just|about|maybe|probably|more like|a bit|a lot|a touch|much|bit|slightly|nowhere near|not|nothing like|really|very|quite) )*(?:as bad|half|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|grade|slight|mild|moderate|marked|severe|worse|bigger|smaller|less|milder|deeper|shallower|wider|narrower|longer|shorter|open|valve|old|bad|small|big|tiny|huge|wee)\\b';
/** What looking round the mouth says of the way, and not of a finding. */
export const wayRound: readonly string[] = [
  '(as|when|if) (i|you|we) (go|come|move|work|get|head) [(further|right|on)] (back|forward|along|round) [(along|down)] [(the|that) row]', '(going|coming|moving|working|heading) [(further|right|on)] (back|forward|along|round) [(along|down|to)] [(the|that) row]',
  '[(stand|standing|stood)] back [(and|to)] (look|looking) at (him|her|it)', '(stand|standing|stood) back', '(going|coming) back (to|on)', '[right] (at|in) the (very back|back of (his|her|the) mouth)', 'now [(for|to|at|on)] the front', 'round the front [now]',
];
/** Before a tooth by its number: one comes back to it. */
export const backTo: readonly string[] = ['back (to|on)'];
