/** X-rays and a look with the scope: wanted, advised, booked, declined; each as a pattern of all that is said. */
const radiographs = '(?:x rays?|x raying|x rayed|x ray it|radiographs?|radiographed|radiographing|films|imaging|imaged|(?:lateral|oblique|open mouth|intraoral)(?: and (?:lateral|oblique))? views)';
const scoping = '(?:scope|scoped|scoping|oroscopy|endoscopy|oral endoscopy|looked at with (?:a|the) (?:scope|camera)|look with (?:a|the) (?:scope|camera)|looking at with (?:a|the) (?:scope|camera)|camera down)';
/** Each with what the record calls it. */
export const imagingNames = [
  ['radiograph', radiographs],
  ['oroscopy', scoping],
] as const;
export const imagingWords: readonly string[] = ['x', 'radiograph', 'radiographs', 'radiographed', 'radiographing', 'films', 'imaging', 'imaged', 'views', 'scope', 'scoped', 'scoping', 'oroscopy', 'endoscopy', 'camera'];

const owner = "(?:(?:but |and |so )?(?:(?:the )?(?:owner|owners|client|rider|yard|groom)|she|he|they|mum|dad|husband|daughter) )";
const small = '(?:(?:a|an|the|some|any|more|having|getting|to have|to get|repeat|follow up|sinus|dental|skull|head|full|set of|good|proper|decent|own|her|him|it|that|this|them|his) )*';
const of = '(?: (?:of|for|on|over|round|at|to|in) (?:.+?))?';
const behind = '(?: (?:before|first|when|if|unless|to see|to rule|so|as|because|for|every|each|in|this|next|today|tomorrow|soon|by|with|at|on|again|after|and see|please|then|properly|too|as well|really|though)\\b.*)?';
const thinking = `(?: ${owner}?(?:is |are |will |would |wants |want )*(?:to |going to )*(?:think|thinking|have a think|see|get back|let me know|discuss|talk|consider|considering|decide|asked|wait)\\b.*)?`;
const no = `(?: ${owner}?(?:is |are |was |were |has |have )*(?:declined|refused|not keen|not taken(?: up)?|said no|turned (?:it|them|that) down|against it|not interested|would rather not|'d rather not|did not want (?:it|them|to)|does not want (?:it|them|to)|not wanted|not for now|not at the moment)\\b.*| too (?:dear|expensive|much)\\b.*)`;
const it = '(?:(?:that|this|it|those|these|them|he|she|him|her)(?: one)?(?: .+?)?|.+?)';
const lead = "(?:(?:and|so|then|now|well|right|also|but|i|we|i think|i reckon|i would say|would|'d|have|be|feel|really|just|probably|definitely|told (?:her|him|them|mum|dad|the owner)(?: (?:it|he|she|that))?|owner to|strongly) )*";
const urged = '(?:advised|advise|advising|recommended|recommend|recommending|suggested|suggest|suggesting|offered|discussed|wants?|needs?|like|love|prefer|benefit from|worth|could do with|should have|ought to have|happier with|would be better with|to have|get|mentioned|talked about)';
const should = '(?:(?:really |definitely |probably |will |does )*(?:wants?|needs?|should be|ought to be|could do with|would benefit from|has to be|must be|needs to be|wants to be|to be|is to be|is for))';

export interface ImagingForm {
  readonly state: 'advised' | 'planned' | 'declined';
  readonly form: (what: string) => string;
}
/** In this order: what was declined was advised before. */
export const imagingForms: readonly ImagingForm[] = [
  { state: 'declined', form: (x) => `${lead}(?:${urged} )?${small}${x}${of}(?: advised| recommended| suggested| offered| discussed)?${no}` },
  { state: 'declined', form: (x) => `${owner}?(?:is |are |was |has |have )*(?:declined|declining|declines|refused|turned down|said no to|passed on|not keen on|not keen to have|against|does not want|do not want|did not want|will not have|would rather not have|'d rather not have|not having|not interested in) ${small}(?:him |her )?${x}${of}(?: (?:for now|on cost|at the moment|today|this time|too dear|at his age|at her age|because|cost|done|yet)\\b.*)?` },
  { state: 'declined', form: (x) => `no ${x}${of} (?:wanted|for now please|at (?:the )?owner.*)` },
  { state: 'planned', form: (x) => `${lead}${small}${x}${of} (?:(?:is|are|have|has|been|already|all|now|to be|getting) )*(?:booked|arranged|scheduled|lined up|organised|planned|in the diary|happening|being done)\\b(?: .*)?` },
  { state: 'planned', form: (x) => `${owner}(?:is |are |has |have |will |all |already |now )*(?:booked|booking|booked in|arranged|arranging|organised|organising|having|getting|going to have|going to get|going for|happy to have|happy to get|happy for|keen to have|willing to have|content to have|agreed to|agreed to have|wants to have|will have|will get|have|get|going ahead with) ${small}${it} ?${small}${x}${behind}` },
  { state: 'planned', form: (x) => `${owner}(?:is |are |has |have |will |all |already |now )*(?:booked|booking|arranged|arranging|organised|agreed to|happy for|happy with|going ahead with|going for) ${small}${x}${of}${behind}` },
  { state: 'advised', form: (x) => `${lead}${urged} ${small}${x}${of}${behind}${thinking}` },
  { state: 'advised', form: (x) => `${lead}(?:get|have|want|like|need|prefer|advised (?:getting|having)|suggested (?:getting|having)|recommend (?:getting|having)|see|getting|having) ${it} ${x}${behind}${thinking}` },
  { state: 'advised', form: (x) => `${lead}(?:${it} )?${should} ${small}${x}${behind}${thinking}` },
  { state: 'advised', form: (x) => `${lead}${should} ${x} (?:that|this|the)(?: .+)?` },
  { state: 'advised', form: (x) => `${lead}${small}${x}${of} (?:(?:is|are|was|were|have been|has been) )*(?:advised|recommended|suggested|needed|required|indicated|offered|discussed)${behind}${thinking}` },
  { state: 'advised', form: (x) => `${lead}(?:am )?(?:not|never) (?:going to )?(?:touch|touching|do|doing|go near|going near|pull|pulling|take|taking) .+? (?:without|till|until|before) (?:.+ )?${x}` },
];
