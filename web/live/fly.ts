/** An item slides from the words to its place in the mouth in a fifth of a second: motion says what changed, and stops. */
const lastsMs = 200;

/** Sends a copy of `from` to each of the places; nothing moves where a person asked for stillness. */
export const fly = (from: HTMLElement, keys: readonly string[]): void => {
  if (matchMedia('(prefers-reduced-motion: reduce)').matches) return;
  const start = from.getBoundingClientRect();
  for (const key of keys) {
    const end = document.querySelector(`.live .mouth [data-key="${CSS.escape(key)}"]`)?.getBoundingClientRect();
    if (!end) continue;
    const copy = from.cloneNode(true) as HTMLElement;
    copy.className = 'live-flying';
    copy.setAttribute('aria-hidden', 'true');
    Object.assign(copy.style, { left: `${start.left}px`, top: `${start.top}px` });
    document.querySelector('.live')?.append(copy);
    const [dx, dy] = [
      end.left + end.width / 2 - start.left - copy.offsetWidth / 2,
      end.top + end.height / 2 - start.top - copy.offsetHeight / 2,
    ];
    const flight = copy.animate(
      [
        { transform: 'none', opacity: 1 },
        { transform: `translate(${dx}px, ${dy}px) scale(0.3)`, opacity: 0.4 },
      ],
      { duration: lastsMs, easing: 'cubic-bezier(0.3, 0, 0.4, 1)' },
    );
    flight.onfinish = flight.oncancel = () => copy.remove();
  }
};
