/** Told to somebody to have done by somebody: a tooth taken out, a thing watched. Each as a pattern of all that is said. */
const lead = '(?:(?:and|so|then|but|well|now|right|also|i|we|have|had|just|already|yeah|ok|okay) )*';
const whose = '(?:(?:the|a|your|his|her|their|my|our|own) )*';
const vet = '(?:vets?|veterinarian|veterinary)';
const someone = `(?:her|him|them|you|both of them|mum|mam|mom|dad|${whose}(?:yard manager|(?:yard )?(?:owners?|grooms?|rider|girls?|lads?|lass|lady|man|boss|trainer|loaner|handler|client|husband|wife|daughter|son|mum|mam|mom|dad|missus|boy)))`;
const urged = '(?:told|advised|asked|recommended(?: to)?|suggested to|said to)';
const out = '(?:out|extracted|removed|pulled|pulled out|taken out|drawn)';
/** Behind it: when, or why. */
const rest = '(?: (?:before|when|once|by|this|next|soon|at|if|as|because|while|for|and not)\\b.*)?';

/** "Advised the owner to have two oh nine extracted", "told her to get that one out": by whom is not said. */
export const haveOut = new RegExp(`^${lead}${urged} ${someone} (?:to |that (?:she|he|they) (?:should )?)(?:(?:have|get|has|gets) (?<what>.+?) ${out}|extract (?<whole>.+?))${rest}$`);
/** "Advised the vet to take them out", "recommended your vet takes that out". */
export const vetToTake = new RegExp(`^${lead}${urged} ${whose}${vet} (?:to |should |that )?(?:(?:takes?|gets?|pulls?|has|have) (?<what>.+?) out|(?:extracts?|removes?) (?<whole>.+?))${rest}$`);
/** "Told your groom to keep an eye on it". */
export const toWatch = new RegExp(`^${lead}(?:told|asked|said to|got|warned|reminded) ${someone} to (?:keep (?:an|half an|a close) eye on (?:it|that|this|them|those|these)|(?:watch|monitor|keep watching) (?:that|this|them|those|these))(?: one| tooth| gap| lump)?(?: (?:for (?:me|us|now|a (?:bit|while))|please|too|as well|till .+|until .+))*$`);
/** A tooth that was spoken of. */
export const ofATooth = /\b(?:it|them|that|those|this|these|both|one|tooth|teeth)\b/;
export const ofSeveral = /\b(?:them|those|these|both|teeth)\b/;
export const ofWolfTeeth = /\bwolf (?:tooth|teeth)\b/;
const fed = '(?:hay|haylage|hard feed|feeds?|food|forage|chaff|chop|nuts|cubes|pellets|beet|mash|mashes|fibre|bran|carrots|apples|alfalfa|lucerne|grass)';
/** "Told her soft mash only, nothing hard", over its pauses: what is to be fed, and for how long. */
export const toFeed = new RegExp(`^${lead}(?:told|advised) ${someone} (?:(?:that|it is|it has to be|to feed|to stick to) )*(?<text>(?=.*\\b${fed}\\b)(?:(?:no|nothing|not|just|only|but|hard|long|and|or|instead of|plenty of|some|his|her|the|soaked|steamed|soft|wet|sloppy|short|damp|chopped|soaking|wetted|mushy|water|else|please|${fed})(?: |$))+(?:(?:for|till|until|from|the next|while)\\b.*)?)$`);
export const toldToWords: readonly string[] = ['told', 'advised', 'asked', 'recommended', 'suggested', 'said', 'got', 'warned', 'reminded'];
