/** Before the tests in the browser: the page as it is now, built to where the program serves it from. */
import { build } from 'vite';

export default async function setup(): Promise<void> {
  await build({ logLevel: 'error' });
}
