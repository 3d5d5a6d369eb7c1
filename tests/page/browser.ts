/** A real chromium with a fake microphone: the browser's own test device, or a WAV file played once. */
import { existsSync } from 'node:fs';
import { chromium, type Browser } from 'playwright-core';

const found = [process.env.QUIDNOTE_CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(
  (path) => path && existsSync(path),
);

/** Starts the browser. `wav` is what its microphone hears, from the moment it is opened; without it, the test device beeps once a second. */
export const launch = async (wav?: string): Promise<Browser> => {
  if (!found) throw new Error('No chromium: install Debian’s `chromium`, or name one in QUIDNOTE_CHROMIUM.');
  return chromium.launch({
    executablePath: found,
    args: [
      '--no-sandbox',
      '--use-fake-ui-for-media-stream',
      '--use-fake-device-for-media-stream',
      ...(wav ? [`--use-file-for-fake-audio-capture=${wav}%noloop`] : []),
      '--autoplay-policy=no-user-gesture-required',
    ],
  });
};

export const screens = {
  phone: { width: 390, height: 844 },
  lying: { width: 844, height: 390 },
  tablet: { width: 820, height: 1180 },
  laptop: { width: 1366, height: 768 },
} as const;
