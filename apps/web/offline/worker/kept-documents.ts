/** Stands for the id in the address of a document that is the same for every record. */
export const blankId = '00000000-0000-7000-8000-000000000000';

const id = '[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}';

/** Documents that open without network. They hold no figures: those come from what the device kept. */
export const keptDocuments: readonly string[] = [
  '/board',
  '/practice',
  `/visits/${blankId}`,
  `/visits/${blankId}/about`,
  `/visits/${blankId}/sign-off`,
];

/** Said where neither the network nor this device has a page. */
export const withoutNetwork = '/without-network';

export interface KeptDocument {
  /** Address under which the document is kept. */
  readonly address: string;
  /** What to put in place of the blank id. */
  readonly id: string | null;
}

/** The kept document that serves a path; null where there is none. */
export function keptDocumentOf(pathname: string): KeptDocument | null {
  if (pathname === '/' || pathname === '/board') return { address: '/board', id: null };
  if (pathname === '/practice') return { address: pathname, id: null };
  const [, visitId, room = ''] = new RegExp(`^/visits/(${id})(/about|/sign-off)?$`).exec(pathname) ?? [];
  return visitId === undefined ? null : { address: `/visits/${blankId}${room}`, id: visitId };
}
