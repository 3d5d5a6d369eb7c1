/** What tells talk from a finding where a part of what was said stands between pauses. */

/** Words that lean on what was said: "came away whole", "both pulled", "left's worse". */
export const leaningWords: readonly string[] = ['it', 'them', 'that', 'those', 'these', 'this', 'both', 'same', 'other', 'rest', 'there'];
/** Of what was found, or of what puts it right ("an old one", "should have said ramp"): such a part is no talk. */
export const ofWhatWasSaid: readonly string[] = ['one', 'ones', 'should', 'said', 'meant', 'mean', 'sorry', 'actually', 'rather', 'instead', 'correction', 'make', 'wait', 'came', 'former', 'latter'];
/** People: among them one everyday word that the trade does not know makes talk. */
export const people: readonly string[] = ['i', 'you', 'we', 'they', 'he', 'she', 'my', 'your', 'our', 'his', 'her', 'me', 'us', 'him', "i'm", "you're", "i've", "i'll", "you'll", "i'd", 'myself', 'yourself'];
/** Said to the horse or the helper, where it stands by itself beside what is said to them: "head down, good". */
export const approving = /^(?:(?:all|very|really|lovely|that is|that's) )*(?:good|fine|grand|great|lovely|perfect|sound|brilliant|spot on|super|smashing)$/;
/** Said of the whole horse, and of nothing that comes behind it: "lovely mouth, back in a year". */
export const praising = /^(?:(?:a|what a|really|very) )*(?:good|nice|lovely|grand|great|cracking|tidy|smashing|super) (?:mouth|job|teeth|set|lad|boy|girl|horse|one)$/;
/** They open or close what is said, and by themselves beside talk are talk: "hang on, let me straighten up, right, none on the left". */
export const besideTalk = /^(?:right|okay|ok|so|well|now|yes|yeah|aye|there|ta|got it|thanks|cheers|(?:and )?that(?:'s| is) (?:better|it|that))$/;
/** It asks for a nod: "smells like a storm doesn't it", "tie your hair back would you". */
export const tagQuestion = / (?:(?:is|does|has|was|did|are|do|would|could|will|can|were|have)(?: not)? (?:it|he|she|they|you|i|we)|eh|innit)$/;
/** Whoever is spoken to, in one word. */
export const vocatives: readonly string[] = ['missus', 'mate', 'pal', 'love', 'pet', 'darling', 'dear', 'buddy', 'bud', 'boss', 'chief', 'sir', 'madam', 'lad', 'lass', 'girl', 'boy', 'son', 'sweetheart', 'mister', 'folks', 'guys', 'doc', 'missy', 'petal', 'hen', 'duck', 'cobber', 'hun', 'hon', 'sunshine', 'fella'];
/** Behind work and "and": how the horse bore it. */
export const boreIt = /^(?:he|she) (?:(?:was|is|has|had|just|really|even|has been) )*(?:did not|does not|never|hardly|barely|stood|tolerated|took it|put up|seemed|slept|dozed|coped|behaved|good|grand|great|fine|perfect|quiet|not bothered|no bother|lovely|brilliant)\b/;
/** Behind work and "so": who is to see it now. */
export const soYouCanSee = /^(?:that )?(?:you|we|they|i|she|he) (?:can|could|will|would|are able to) (?:all |now |both )*(?:see|have a|get a|take a|look|be able)\b/;
