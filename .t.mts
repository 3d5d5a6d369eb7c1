// npx tsx /tmp/try.mts "phrase" "line one / line two": what the grammar of the current folder reads.
const { emptyContext, parseText } = await import(process.cwd() + '/parser/index.ts');
const { after } = await import(process.cwd() + '/tests/parser/corpus.ts');
const { bare } = await import(process.cwd() + '/tests/match.ts');
for (const arg of process.argv.slice(2)) {
  let ctx = emptyContext();
  for (const [i, line] of arg.split(' / ').entries()) {
    const r = parseText('t/' + i, line, ctx);
    ctx = after(ctx, r);
    console.log('> ' + line);
    for (const x of r.items) console.log('   ' + JSON.stringify(bare(x)));
    for (const x of r.commands) console.log('   COMMAND ' + JSON.stringify({ command: x.command, now: (x as any).now, name: (x as any).name }));
    for (const x of r.doubts) console.log('   DOUBT ' + x.doubt + ' | ' + x.words + (x.readings ? ' | ' + x.readings.map((y: any) => y.label).join(' / ') : ''));
    if (r.header) console.log('   HEADER ' + JSON.stringify(r.header));
    if (r.leftovers?.length) console.log('   LEFT ' + r.leftovers.join(' '));
  }
}
