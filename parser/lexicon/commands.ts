/** Speech that steers (contract section 8): openers, a verb, what it is done to, politeness. `whole` acts only as the whole phrase. */
export interface CommandEntry { readonly label: string; readonly whole: boolean; readonly say: readonly string[]; /** What undoes it, and sounds like it. */ readonly opposite?: string; /** Only asks: also obeyed behind a finding in the same breath. */ readonly behind?: true }

/** Said before any command, and behind any: they change nothing. */
export const commandOpeners: readonly string[] = ['okay', 'ok', 'right', 'righto', 'so', 'now', 'well', 'and', 'then', 'um', 'uh', 'er', 'erm', 'ah', 'oh', 'yeah', 'yes', 'no', 'wait', 'oops', 'whoops', 'sorry', 'actually', 'just', 'please', 'quidnote', '(hang|hold) on [[just] (a|one) (minute|moment|second|sec)]', 'just a (minute|moment|second|sec)', 'bear with me', 'my mistake', '(can|could|would|will) you'];
export const commandClosers: readonly string[] = ['please', 'thanks', 'thank you', 'cheers', 'ta', 'now', 'then', 'okay', '(for|to) (me|us)', 'once more', 'one more time', '(would|will|could|can) you'];
/** Why it is struck, behind it: "scratch that, wrong side". Which is right, it does not say. */
export const strikingBecause: readonly string[] = ["[(that's|that is|that was|it is|it was|i have got|i have given you|i got|i had|i gave you|got|had|have got)] [the] wrong (side|one|tooth|row|horse|number|end|line|way round|place)", "[(that's|that is|that was)] my (mistake|fault|error)", "(that's|that is|that was|it is|it was) (not right|wrong|rubbish|nonsense)", 'i (misread|misheard|miscounted|mixed up|got mixed up) [(it|that|them)]', "i did not mean [to say] that"];

// What a command is said of, and never a tooth, a tool or the horse: "take the last bit off" is said of a hook, "take the last entry off" of the record.
const written = '(entry|item|line|finding|note)';
const yours = '(i said|i gave you|you (got|have|put down))';
const last = `(the|that) last (one|bit|thing|${written}) [${yours}]`;
const lastWritten = `(the|that) last (${written}|(one|bit|thing) ${yours})`;
const thatOne = '(it|that|that one|this one|(the|that) last one)';
const ofTheRecord = '(off|out of|from) the (record|chart|list|sheet|notes)';
const all = "(it all|everything|all of it|the (lot|whole (lot|thing|exam|chart|record))) [(so far|(you|i|we) have [got] [so far])]";
const recording = '[the] (recording|notes|listening|dictation)';
const aMoment = '[for] (a|one) (minute|moment|second|sec|bit)';
const has = '(you|we|i) have [got]';
const exam = '[(this|the)] exam';
const thats = "(that's|that is)";
const lookAt = '(do|go|look at|check|see|cover|examine)';
const done = '(done|covered|checked|looked at|seen)';
const vet = '[the|a|his|her|our] (vet|veterinarian|veterinary (surgeon|attention)) [to (see|look at|check|have a look at)]';
const mark = '(flag|mark|tag|highlight|earmark)';
// Why something is struck, or brought back, said beside it: "that's wrong, delete it".
const wrong = "(that's|that is|that was|it was|i was|i got (that|it)) wrong|i did not mean (that|it)|i (misspoke|mis spoke)";
const whatLast = `(that|that one|this one|(my|the|that) last|${last})`;
const right = 'i was right [the first time]|i want (that|it)|i did not mean to (delete|strike|scratch|scrap|lose) (that|it)|that was right';

export const commands = {
  'strike-last': { label: 'Strike the last', whole: true, opposite: 'bring-back', say: [
    `[${wrong}] (scratch|strike|delete|undo|scrap|scrub|cancel|erase) ${whatLast}`, `(scratch|strike|delete|undo|scrap|scrub|cancel|erase) ${whatLast} (${wrong})`, `(forget|ignore|discard|disregard|lose|drop|bin|never mind) ${last} [${wrong}]`,
    `(scratch|strike|delete|undo|scrap|erase|remove) [my] last [${written}|one|bit]`, `(remove|delete|erase|scrap) (that|my last|this) ${written}`, 'wipe that [one]', '(do not|no do not) (put that down|record that|write that down|log that)', 'forget i said that', `(scratch|strike|delete|undo|scrap|scrub|cancel|erase|forget|ignore|bin) what i [(just|last)] said`,
    `(remove|wipe) ${lastWritten}`, '(remove|wipe) (the|that) last one', '(forget|ignore|discard|disregard) that [one]',
    `(take|get|cross|rub|leave|wipe) ${lastWritten} (off|out|back) [again]`, '(cross|leave) (the|that) last (one|bit|thing) (off|out)', '(cross that [one] (off|out)|rub that [one] out)', `get rid of (${lastWritten}|(the|that) last one|that entry)`,
    `(take|get|cross|wipe|strike|remove) ${thatOne} ${ofTheRecord}`, 'take (that [(one|bit)]|(the|that) last (one|bit)) back [off]', 'take that [one] off again', '(scratch|strike|delete|undo) that again',
    'take (the|that) last (one|bit|thing) out', '(wipe|remove) (the|that) last (bit|thing)', `[${last} was wrong|${wrong}] (scratch|strike|delete|scrap|erase) it`] },
  'bring-back': { label: 'Bring back', whole: true, opposite: 'strike-last', say: [`[undo that|i (did|do) want (that|it|that one)|${right}] (put|bring) ${thatOne} back [again|in|on|on the (chart|record|list)|${right}]`, '(undo|reverse) (the|that) (undo|strike|delete|deletion)', 'bring back (it|that|that one|(the|that) last (one|entry|finding))', 'do not (delete|strike|scratch|scrap) (that|it)', 'get that one back', '(bring|put) back (what|the (one|last one)) (you|i) [just] (struck|deleted|scratched|removed|undid|scrapped)', `[keep it] put ${thatOne} back in`, 'restore (it|that|that one|(the|that) last one|(the|that) [last] (entry|finding|line)|what (you|i) [just] (struck|deleted|scratched|removed))'] },
  amend: { label: 'Correct', whole: false, say: ['correction'] },
  answer: { label: 'Answer', whole: true, say: ['first', 'second', 'third', 'fourth'].flatMap((nth) => [`the ${nth}`, `[the] ${nth} (one|option|reading) [of (those|them|the two)]`, `the ${nth} of (those|them|the two)`, `(it is|it was|it's|i meant|i mean|make it|go (with|for)|pick|choose|i will (take|have)) the ${nth} [one|option|reading]`]).concat(['(upper|top|lower|bottom) one', '[(it is|it was|i meant|i mean|that is)] the (upper|top|lower|bottom) [one] [that is]']) },
  'repeat-last': { label: 'Say the last again', whole: true, behind: true, say: [
    `(say|read) [me] (it|that|that one|${last}) (again|back)`, `what was ${last} [again]`, `read [me] ${last} [out]`, 'read [me] that bit back [again]', `repeat (it|that|that one|${last})`, 'what did i (just say|say last)', `(say|read|repeat) what i (just said|said last) [again|back]`, 'repeat what i just said', `what was my last (one|${written})`, `tell me (${last}|what (you|i) (got|put) [down] for (that|that one)|what ${has} [down] for (that|that one))`, `(play|let me hear) (that|it|${last}) (back|again)`, `let me hear ${last}`, 'read back [the last [one]]', 'repeat (please|again)', `read [me] out ${last}`, 'what have you put down', 'read [me] back [(the|that)] last [(one|entry|bit|finding)]',
    'what did you (get|hear|write|put) [down] [(there|for that [one])]', 'what have you (got|put|written) [down] [(there|for that [one])]'] },
  'read-all': { label: 'Read it all', whole: true, behind: true, say: [`read [(me|us)] ${all} [(back|out|again)]`, `let me hear ${all}`, `read [me] (back|out) ${all}`, `(run|go|take me|talk me) through (${all}|what ${has}) [again]`, 'read [me] (the|my) (chart|record|notes) [(back|out)]', 'what have (you|i|we) (got|recorded|put down|written [down]) so far', `tell (me|us) (everything|what ${has} [down]) [so far]`, "(let me|let's|let us) hear (it all|what (you|we|i) have got [so far])", `(go over|list) ${all} [again]`, '[give me [a]] (summary|rundown|run down) (please|so far)', 'give me (a|the) (summary|rundown|run down)', 'read (me|out|back) [me] (all [of] the|the|all my|my) findings [back|out]', 'read [me] the (whole thing|lot|whole lot|notes) [back] [from the (top|start|beginning)]', 'read all'] },
  'what-is-left': { label: 'What is left?', whole: true, behind: true, say: [
    'what is left', 'what else is left', `what else is there [left] to ${lookAt}`, `what (is|have i) [still] [got] [left] to ${lookAt}`, 'what (else|still) (is|have i) [got] [left] (there|to (do|go|look at|check|see|cover))', 'what is (outstanding|missing|still to do)',
    'what [else] do i [still] (need to do|have left [to do])', `what have i [still] (got left|left to do|missed|forgotten|left out|not ${done}) [yet]`, `what (has not|have not) i ${done} [yet]`, 'what am i missing',
    '(have|did) i (missed|miss|forgotten|forget|left out) (anything|something|any|any (bits|teeth))', '(have|did) (i|we) (done|do|covered|cover|checked|check) (everything|all of it|it all)', `what (bits|teeth|parts) (have|did) i (missed|miss|left out|not ${done})`, 'which (bits|teeth|parts) (are|have i) left', 'what (still needs|needs still|is still to be|else needs) (doing|looking at|checking)', 'what do i have left', `what have i got [left] to ${lookAt} (still|yet)`, '(is there|have we) anything (still|left|still left) to do', `[is there] anything [[that] i have] (missed|forgotten|left out|not ${done}) [yet]`, '[is there] anything i (missed|left out)', `anything (missing|left [to ${lookAt}])`, `(tell me|remind me|show me) what (is left [to ${lookAt}]|[else] i have (missed|left [to ${lookAt}]|left out|not ${done})|is (missing|outstanding|still to do)) [yet]`] },
  pause: { label: 'Pause', whole: true, opposite: 'resume', say: [`(stop|pause|hold) ${recording} [there] [${aMoment}]`, `pause (there|that|it|it there) [${aMoment}]`, `pause [${aMoment}]`, 'pause [the] exam', "(let's|let us|can (we|i)|i will) pause (there|here|it|now)", `(let's|let us|can (we|i)|i will) pause ${aMoment}`, '(take|give me) a pause', 'stop (taking notes|taking this down|writing [this down])', 'off the record (for a (minute|moment|second|bit)|please|now)', 'pause (please|now)', '(please|quidnote) pause', '(hang|hold) on [[just] (a|one) (minute|moment|second|sec)] pause', `do not (listen|record) (for now|${aMoment})`] },
  resume: { label: 'Carry on', whole: true, opposite: 'pause', say: [`[you can] (start|carry on|resume|continue|keep [on]|restart) [with] ${recording} [again]`, '(resume|continue|carry on with|restart) [the] exam', 'back on the record', 'listen again', 'you can (listen|record) again', '[back to it] resume', '(un pause|unpause) [the recording]'] },
  'next-horse': { label: 'Next horse', whole: true, say: [`[${thats} (him|her) (done|finished)] [[(move|moving)] on to|start|start on|now for] [the] next horse`, '[[(move|moving)] on to|start|start on|now for] [a] new horse', '[on to|start|begin|now for] [the] next (patient|horse|pony)', '[start] a new exam', '[start] new exam', 'new patient', '[we are|i am] ready for the next horse', "(we will|let's|lets|let us) (move|go) [on] to the next horse"] },
  finish: { label: 'Finish', whole: true, say: [
    `finish [off] ${exam} [(off|there)]`, `[${thats}|${thats} the] end of ${exam}`, '(finished|ended|completed|complete|close off|close) (the|this) exam', `${thats} (me|us) (done|finished) with (this|that) (one|horse|pony)`, '(we are|i am) (done|finished) with this (horse|pony|one)', `[${thats} (this one|him|her) (done|finished)] (close|wrap up) (this|the) exam`, `[${thats} (him|her) (done|finished)] (finish|end) ${exam} [there]`, 'finish [off] (this|the) (horse|pony|one) [off]', 'finish (horse|pony) [off]', 'finish up [here]',
    `${thats} (him|her|this one|the exam) finished [(with|now|for today)]`, `${thats} this (fella|fellow|lad|horse|pony|mare|gelding|one) (finished|done)`, `${thats} the exam (done|over)`, 'exam (finished|over|complete)', `${thats} us (done|finished) [with (this|that) (one|horse|pony)]`, `(we are|i am) [all] (done|finished) here (finish|end) ${exam}`] },
  'flag-for-veterinarian': { label: 'Mark for the vet', whole: false, behind: true, say: [`${mark} [this|${thatOne}|(this|that|the last) (finding|entry|tooth)] [up|down] for ${vet}`, `(put|stick) a (flag|mark) on (this|${thatOne}) for ${vet}`, `(put|stick) a vet flag on (this|${thatOne})`, `${thatOne} (needs|wants) (flagging|marking|tagging) [up] for ${vet}`, `(make sure|see) (that's|that is|it is) (flagged|marked) [up] for ${vet}`] },
  note: { label: 'Note', whole: false, say: ['note', '(make|take) a note [of (that|this|it)]', 'note (that|this|it) [down]'] },
} as const satisfies Record<string, CommandEntry>;
/** "Carry on", while paused and the whole phrase: to whoever holds the horse it says nothing else. */
export const carryingOn: readonly string[] = ["[(let's|lets|let us|we will|we can|i will)] (carry on|keep going|continue|go on)", 'on we go [again]', 'back to it'];
/** "Flag the step on two oh nine for the vet": around the name of what was recorded. */
export const flagging: readonly string[] = ['flag [up]', 'mark [up]', '(put|stick) a (flag|mark) on'];
export const forTheVet: readonly string[] = [`[(up|down)] for ${vet}`];
/** Between "next horse" and its name. */
export const namedBy: readonly string[] = ['is', 'called', 'named', 'is called', 'is named', "this one's called", 'this one is called', "this one's", 'this one is', "he's called", "she's called", 'he is called', 'she is called', 'his name is', 'her name is', 'name of'];
/** Behind "next horse" these go on with a sentence about it. */
export const notBeforeNames: readonly string[] = [
  ...['a', 'an', 'very', 'so', 'quite', 'too', 'really', 'just', 'still', 'always', 'never', 'already', 'being', 'getting', 'going', 'coming', 'waiting', 'here', 'there', 'his', 'her', 'my', 'your', 'yours', 'mine'],
  ...['ready', 'due', 'done', 'tied', 'nervous', 'quiet', 'difficult', 'tricky', 'lame', 'young', 'old', 'big', 'small', 'good', 'bad', 'fine', 'sedated'],
  'is', 'are', 'was', 'were', 'has', 'have', 'had', 'does', 'did', 'can', 'will', 'would', 'wants', 'needs', 'looks', 'stands', 'kicks', 'bites', 'along', 'over', 'in', 'on', 'at', 'up', 'down', 'out', 'by', 'for', 'from', 'with', 'not', 'and', 'or', 'but', 'that', 'who', 'when', 'until', 'today', 'tomorrow'];
export type CommandId = keyof typeof commands;
export const commandIds = Object.keys(commands) as [CommandId, ...CommandId[]];
