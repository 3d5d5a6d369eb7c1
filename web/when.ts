/** Days as a person reads them, in the device's own language. Times come with their offset; a missing time says so. */
export const dayWords = (iso: string | null | undefined): string =>
  iso ? new Date(iso).toLocaleDateString(undefined, { weekday: 'short', day: 'numeric', month: 'long', year: 'numeric' }) : 'No date';
/** A moment to the minute. */
export const momentWords = (iso: string): string =>
  new Date(iso).toLocaleString(undefined, { day: 'numeric', month: 'short', year: 'numeric', hour: '2-digit', minute: '2-digit' });
export const shortDay = (iso: string | null | undefined): string =>
  iso ? new Date(iso).toLocaleDateString(undefined, { day: 'numeric', month: 'short', year: 'numeric' }) : 'No date';
/** Days from now to then; negative when it is past. */
export const daysUntil = (iso: string, now: number): number => Math.round((Date.parse(iso) - now) / 86_400_000);
export function untilWords(iso: string, now: number): string {
  const days = daysUntil(iso, now);
  if (days < -1) return `${-days} days over`;
  if (days <= 1) return days < 0 ? 'since yesterday' : days === 0 ? 'today' : 'tomorrow';
  return days < 60 ? `in ${days} days` : `in ${Math.round(days / 30.4)} months`;
}
