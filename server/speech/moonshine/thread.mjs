// Starts worker.ts in a thread: the TypeScript loader is registered here, because a worker does not inherit it in every host.
import { register } from 'tsx/esm/api';

register();
await import('./worker.ts');
