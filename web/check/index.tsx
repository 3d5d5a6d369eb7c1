export function Check({ id }: { id?: string | undefined }) { return <main class="paper" tabIndex={-1}><h1>Looking over</h1><p>{id}</p></main>; }
