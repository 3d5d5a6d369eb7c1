/** One socket that comes back by itself: tried again a little later each time, for as long as it is wanted. */
export interface Socket {
  /** Sends if the socket is open; what is sent into a dying one is lost, so sound is kept elsewhere until acknowledged. */
  readonly send: (data: string | Uint8Array<ArrayBuffer>) => void;
  readonly isOpen: () => boolean;
  /** Bytes handed over that have not left the browser yet. */
  readonly queued: () => number;
  /** Drops a connection that has gone quiet; the next try starts at once. */
  readonly renew: () => void;
  readonly close: () => void;
}
export interface SocketEvents {
  readonly open: () => void;
  readonly text: (text: string) => void;
  readonly down: () => void;
}

const firstWaitMs = 250;
const longestWaitMs = 5000;

/** Wait before try number `n` (0, 1, 2 ...), with up to a quarter taken off at random, so that two pages do not knock together. */
export const waitMs = (n: number, random: number): number => Math.min(longestWaitMs, firstWaitMs * 2 ** n) * (1 - random / 4);

/** Opens a socket to `url` and keeps it open. */
export const openSocket = (url: string, on: SocketEvents, make = (at: string): WebSocket => new WebSocket(at)): Socket => {
  let wanted = true;
  let failures = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let socket: WebSocket;
  const connect = (): void => {
    clearTimeout(timer);
    const mine = (socket = make(url));
    mine.binaryType = 'arraybuffer';
    mine.onopen = () => {
      failures = 0;
      on.open();
    };
    mine.onmessage = ({ data }) => {
      if (mine === socket && typeof data === 'string') on.text(data);
    };
    mine.onclose = () => {
      if (mine !== socket || !wanted) return;
      on.down();
      timer = setTimeout(connect, waitMs(failures++, Math.random()));
    };
  };
  /** Leaves the old connection to close on its own time: a dead one can take minutes to say so. */
  const renew = (): void => {
    if (!wanted) return;
    const old = socket;
    old.onclose = null;
    old.close();
    on.down();
    connect();
  };
  connect();
  if (typeof window !== 'undefined') window.addEventListener('online', renew);
  return {
    send: (data) => {
      if (socket.readyState === WebSocket.OPEN) socket.send(data);
    },
    isOpen: () => socket.readyState === WebSocket.OPEN,
    queued: () => socket.bufferedAmount,
    renew,
    close: () => {
      wanted = false;
      clearTimeout(timer);
      if (typeof window !== 'undefined') window.removeEventListener('online', renew);
      socket.close();
    },
  };
};
