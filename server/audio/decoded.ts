/** A stretch of decoded sound, as every reader gives it. */
export type Decoded = { readonly channelData: readonly Float32Array[]; readonly rate: number };

/** Something about a recording that a person should know, though it could be read. */
export type Notice = { readonly code: 'truncated' | 'damaged' | 'clipped'; readonly message: string };
