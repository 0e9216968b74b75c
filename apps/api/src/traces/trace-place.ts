import type { ObjectStore } from '../plumbing/object-store.js';
import type { TracedLog } from './load-traced-log.js';

/** Where the traces of a log lie: beside its bytes, under the name of what they were made from. */
export function tracePlace(objects: ObjectStore, sha256: string, build: TracedLog['build']): string {
  return objects.besideOf(sha256, `${build}.trace`);
}
