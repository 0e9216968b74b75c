/// <reference lib="webworker" />
import { Serwist, type PrecacheEntry } from 'serwist';
import { blankId, keptDocumentOf, withoutNetwork } from './kept-documents';

declare const self: ServiceWorkerGlobalScope;
/** Put in when it is bundled, after the build of the dashboard. */
declare const SHELL: PrecacheEntry[];

/**
 * Keeps the shell of the dashboard: scripts, styles, typeface, and the documents of board and visit. A page and its
 * scripts come from the same build; a newer one waits until a page says so. Answers of the API are none of its
 * business: what the device knows, and as of when, is kept with the outbox.
 */
const serwist = new Serwist({ precacheEntries: SHELL, skipWaiting: false, clientsClaim: true });

serwist.registerCapture(
  ({ request, sameOrigin }) => sameOrigin && request.mode === 'navigate',
  ({ request, url }) => openPage(request, url),
);
self.addEventListener('message', ({ data }: ExtendableMessageEvent) => {
  if (data === 'take over') void self.skipWaiting();
});
serwist.addEventListeners();

async function openPage(request: Request, url: URL): Promise<Response> {
  const kept = keptDocumentOf(url.pathname);
  const document = kept === null ? undefined : await serwist.matchPrecache(kept.address);
  if (kept !== null && document !== undefined) return withId(document, kept.id);
  try {
    return await fetch(request);
  } catch (error) {
    const page = await serwist.matchPrecache(withoutNetwork);
    if (page === undefined) throw error;
    return page;
  }
}

async function withId(document: Response, id: string | null): Promise<Response> {
  if (id === null) return document;
  const headers = new Headers(document.headers);
  headers.delete('content-encoding');
  headers.delete('content-length');
  return new Response((await document.text()).replaceAll(blankId, id), { status: 200, headers });
}
