/** A spoken form at its shortest, with its first choices taken: "finish [(this|the)] exam" as "finish exam". Innermost brackets go first. */
export function shortest(form: string): string {
  const less = form
    .replace(/(?<=\w)\([a-z|]*\)/g, '')
    .replace(/\[[^[\]()]*\]/g, '')
    .replace(/\(([^()[\]|]*)(?:\|[^()[\]]*)?\)/g, '$1');
  return less === form ? form.replace(/ +/g, ' ').trim() : shortest(less);
}
