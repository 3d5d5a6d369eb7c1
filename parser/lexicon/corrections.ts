/** Words by which a speaker takes back what was just said. At a phrase's start they amend the last item; inside a phrase they undo what stands before them. */
export const correctionSay: readonly string[] = [
  'correction', 'sorry', 'sorry no', 'sorry i mean', 'sorry i meant', 'sorry make that', 'sorry that is', 'sorry that should be', 'no sorry', 'no sorry i mean', 'i mean', 'i meant', 'i do mean', 'no i mean', 'no i meant', 'no make that', 'make that', 'make it',
  'no make it', 'no wait', 'wait no', 'no wait make that', 'no that is', "no that's", 'no it is', 'no that was', 'no that should be', 'that should be', 'that should read', 'should be', 'scratch that', 'no scratch that', 'or rather', 'rather', 'apologies', 'my mistake', 'no correction', 'actually no', 'i tell a lie', 'change that to', 'that was', 'it was', 'not that',
];
/** Of these, the ones that are also ordinary talk: they correct only at a phrase's start. */
export const onlyAtStart: readonly string[] = ['no it is', 'that should be', 'should be', 'that was', 'it was', 'not that', 'make it', 'i do mean'];
