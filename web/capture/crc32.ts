/** CRC-32/ISO-HDLC (reflected polynomial 0xEDB88320, start and final value all ones), as in zip and Ethernet. */
const table = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1;
  return c;
});

/** Checksum of some bytes, as an unsigned 32-bit number. */
export const crc32 = (bytes: Uint8Array): number => {
  let c = 0xffffffff;
  for (const byte of bytes) c = (c >>> 8) ^ table[(c ^ byte) & 0xff]!;
  return (c ^ 0xffffffff) >>> 0;
};
