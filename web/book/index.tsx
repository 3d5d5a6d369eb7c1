export function Book() { return <main class="paper" tabIndex={-1}><h1>The book</h1></main>; }
