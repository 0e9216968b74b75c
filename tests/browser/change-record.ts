import type { APIRequestContext } from 'playwright-core';

/** Changes a record on the revision that it has now, as another device does. */
export async function changeRecord(api: APIRequestContext, path: string, change: object): Promise<void> {
  const now = (await (await api.get(`/api/v1${path}`)).json()) as { revision: number };
  const answer = await api.patch(`/api/v1${path}`, {
    data: change,
    headers: { 'if-match': `"${now.revision}"` },
  });
  if (!answer.ok()) throw new Error(`${path}: ${answer.status()} ${await answer.text()}`);
}
