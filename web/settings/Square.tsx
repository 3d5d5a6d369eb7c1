/** A code to point a camera at, drawn as one path: dark squares on light ground in either mood, with the quiet zone of four squares that the standard asks for (ISO/IEC 18004). */
const quiet = 4;

export function Square({ rows, label }: { readonly rows: readonly string[]; readonly label: string }) {
  const size = rows.length + 2 * quiet;
  // Runs of dark squares, so that no seams show between them.
  const path = rows
    .flatMap((row, y) =>
      [...row.matchAll(/1+/g)].map(({ 0: run, index }) => `M${index + quiet} ${y + quiet}h${run.length}v1h-${run.length}z`),
    )
    .join('');
  return (
    <svg class="square" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={label} shape-rendering="crispEdges">
      <rect width={size} height={size} rx="2" class="light" />
      <path d={path} class="dark" />
    </svg>
  );
}
