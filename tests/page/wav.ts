/** Samples (-1 to 1, held at the rails) as a mono 16-bit WAV file (RIFF, Microsoft and IBM 1991). */
export const wav = (samples: ArrayLike<number>, rate: number): Buffer => {
  const file = Buffer.alloc(44 + samples.length * 2);
  file.write('RIFF', 0, 'ascii');
  file.writeUInt32LE(36 + samples.length * 2, 4);
  file.write('WAVEfmt ', 8, 'ascii');
  file.writeUInt32LE(16, 16);
  [1, 1].forEach((value, i) => file.writeUInt16LE(value, 20 + i * 2));
  [rate, rate * 2].forEach((value, i) => file.writeUInt32LE(value, 24 + i * 4));
  [2, 16].forEach((value, i) => file.writeUInt16LE(value, 32 + i * 2));
  file.write('data', 36, 'ascii');
  file.writeUInt32LE(samples.length * 2, 40);
  for (let i = 0; i < samples.length; i++) file.writeInt16LE(Math.round(Math.max(-1, Math.min(1, samples[i]!)) * 32767), 44 + i * 2);
  return file;
};
