/** The two numbers of a sound frame (its layout: wire.ts). On their own, so that the page takes them without the schemas. */
export const soundMagic = 0x51444e31;
/** Samples a second, mono. */
export const sampleRate = 16000;
