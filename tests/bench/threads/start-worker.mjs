// A thread does not inherit the loader of TypeScript sources on Node 20: it is registered here.
import { workerData } from 'node:worker_threads';
import { register } from 'tsx/esm/api';

register();
await import(workerData.module);
