/** Speech that steers (contract section 8). `whole` acts only as the whole phrase. */
export interface CommandEntry { readonly label: string; readonly whole: boolean; readonly say: readonly string[]; /** What undoes it, and sounds like it. */ readonly opposite?: string }
export const commands = {
  'strike-last': { label: 'Strike the last', whole: true, opposite: 'bring-back', say: ['[no] scratch that', '[no] take that back', '[no] strike that', 'strike the last one', 'delete the last one', 'scratch the last one', 'take the last one back'] },
  'bring-back': { label: 'Bring back', whole: true, opposite: 'strike-last', say: ['[no] put (that|it) back', 'bring that back', 'bring it back'] },
  amend: { label: 'Correct', whole: false, say: ['correction'] },
  answer: { label: 'Answer', whole: true, say: ['the first [one]', 'the second [one]', 'the third [one]', 'the fourth [one]'] },
  'repeat-last': { label: 'Say the last again', whole: true, say: ['say that again', 'read that back [(again|to me)]', 'read it back', 'read (the last|that last) (one|bit) [back]', 'repeat (that|the last one)', 'what did you (get|hear|write [down]|put [down])'] },
  'read-all': { label: 'Read it all', whole: true, say: ['read it all [back]', 'read everything [(back|so far)]', 'read me everything [so far]', 'read (me|us) it all', 'read [(me|us)] the (whole lot|lot|whole thing|whole exam) [back]', 'read back everything'] },
  'what-is-left': { label: 'What is left?', whole: true, say: ['what is left', 'what is left to do', 'what is left to (look at|check|see|cover)', 'what (is|have i) still [got] to (do|go|look at|check)', 'what have i [still] (got left|left to do|missed|not (done|covered|checked|looked at)) [yet]', '(have|did) i (missed|miss|forgotten|forget|left out) (anything|something)', 'what (has not|have not) i (done|covered|checked)', 'what have i left out', 'anything (left|missing|missed)', 'what am i missing', 'what is missing'] },
  pause: { label: 'Pause', whole: true, opposite: 'resume', say: ['stop listening [for (a|one) (minute|moment|second|sec|bit)]', 'pause [the] (notes|recording)', 'stop recording', 'pause listening'] },
  resume: { label: 'Carry on', whole: true, opposite: 'pause', say: ['(start|carry on|resume) listening [again]', 'resume [the] (notes|recording)', 'start recording [again]'] },
  'next-horse': { label: 'Next horse', whole: true, say: ['next horse'] },
  finish: { label: 'Finish', whole: true, say: ['finish [(this|the)] exam', 'end [of] [(this|the)] exam'] },
  'flag-for-veterinarian': { label: 'Mark for the vet', whole: false, say: ['flag [(that|this)] for the vet', 'mark [(that|this)] for the vet'] },
  note: { label: 'Note', whole: false, say: ['note'] },
} as const satisfies Record<string, CommandEntry>;
export type CommandId = keyof typeof commands;
export const commandIds = Object.keys(commands) as [CommandId, ...CommandId[]];
