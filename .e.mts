const { emptyContext, parseText, explain } = await import(process.cwd() + '/parser/index.ts');
const { after } = await import(process.cwd() + '/tests/parser/corpus.ts');
for (const arg of process.argv.slice(2)) { let ctx = emptyContext(); for (const [i, line] of arg.split(' / ').entries()) { const r = parseText('t/' + i, line, ctx); ctx = after(ctx, r); console.log(explain(r)); } }
