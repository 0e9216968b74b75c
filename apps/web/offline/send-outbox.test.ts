import { describe, expect, it } from 'vitest';
import { idMadeBy } from './outbox-order';
import { sendOutbox, type Post, type Sendable, type Try } from './send-outbox';
import { entryOf, memoryOutbox } from './test-outbox';

const taken = (id: string): Try => ({ kind: 'taken', answer: { id } });
const refusal = { status: 409, code: 'visit-closed', text: 'this visit is closed' } as const;

/** A server that answers in turn, and remembers what it was sent. */
function answering(...answers: Try[]): { post: Post; sent: Sendable[] } {
  const sent: Sendable[] = [];
  const post: Post = async (sendable) => {
    sent.push(sendable);
    return answers[sent.length - 1] ?? taken(`made-${sent.length}`);
  };
  return { post, sent };
}

const sendingTo = (store: ReturnType<typeof memoryOutbox>, post: Post) => ({
  store,
  memberId: 'me',
  post,
  now: () => new Date('2026-03-02T12:00:00Z'),
  onChange: () => undefined,
});

describe('sendOutbox', () => {
  it('sends all that waits, in order, each under its own key', async () => {
    const store = memoryOutbox([entryOf(2), entryOf(1), entryOf(3)]);
    const { post, sent } = answering();
    expect(await sendOutbox(sendingTo(store, post))).toBe('done');
    expect(sent.map(({ entry }) => entry.key)).toEqual(['key-1', 'key-2', 'key-3']);
    expect((await store.all()).every((entry) => entry.state === 'sent')).toBe(true);
  });

  it('stops where no answer comes, and sends the same with the same key next time', async () => {
    const store = memoryOutbox([entryOf(1), entryOf(2)]);
    const { post, sent } = answering(taken('a'), { kind: 'later' });
    expect(await sendOutbox(sendingTo(store, post))).toBe('later');
    expect((await store.all()).map((entry) => entry.state)).toEqual(['sent', 'waiting']);
    expect(await sendOutbox(sendingTo(store, post))).toBe('done');
    expect(sent.map(({ entry }) => entry.key)).toEqual(['key-1', 'key-2', 'key-2']);
  });

  it('keeps a refused entry with its reason, and what is behind it of the same visit', async () => {
    const store = memoryOutbox([entryOf(1), entryOf(2), entryOf(3, { visitId: 'another visit' })]);
    const { post, sent } = answering({ kind: 'refused', refusal });
    expect(await sendOutbox(sendingTo(store, post))).toBe('done');
    expect(sent.map(({ entry }) => entry.order)).toEqual([1, 3]);
    expect((await store.all()).map((entry) => entry.state)).toEqual(['refused', 'waiting', 'sent']);
    expect((await store.all())[0]?.refusal).toEqual(refusal);
  });

  it('touches nothing when nobody is signed in', async () => {
    const store = memoryOutbox([entryOf(1)]);
    const { post } = answering({ kind: 'signed-out' });
    expect(await sendOutbox(sendingTo(store, post))).toBe('signed-out');
    expect((await store.all())[0]?.state).toBe('waiting');
  });

  it('fills in what an earlier entry made, and lets go of a file once it has arrived', async () => {
    const log = entryOf(1, { file: new Blob(['a,b']) });
    const follows = entryOf(2, { path: `/logs/${idMadeBy('key-1')}/pulls`, body: { of: idMadeBy('key-1') } });
    const store = memoryOutbox([log, follows]);
    const { post, sent } = answering(taken('log-5'));
    await sendOutbox(sendingTo(store, post));
    expect(sent[1]).toMatchObject({ path: '/logs/log-5/pulls', bodyText: '{"of":"log-5"}' });
    expect((await store.all())[0]?.file).toBeNull();
  });

  it('says that the car was found sound of the pull that it has just sent, and only once that is stored', async () => {
    const mark = entryOf(2, { path: `/pulls/${idMadeBy('key-1')}/found-sound`, body: { note: 'hoses on' } });
    const store = memoryOutbox([entryOf(1), mark]);
    const { post, sent } = answering({ kind: 'later' }, taken('pull-9'));
    expect(await sendOutbox(sendingTo(store, post))).toBe('later');
    expect(sent.map(({ entry }) => entry.key)).toEqual(['key-1']);
    expect(await sendOutbox(sendingTo(store, post))).toBe('done');
    expect(sent.at(-1)).toMatchObject({
      path: '/pulls/pull-9/found-sound',
      bodyText: '{"note":"hoses on"}',
    });
  });

  it('refuses here what belongs to a record that never came to be', async () => {
    const store = memoryOutbox([entryOf(2, { path: `/pulls/${idMadeBy('gone')}/void` })]);
    const { post, sent } = answering();
    await sendOutbox(sendingTo(store, post));
    expect(sent).toEqual([]);
    expect((await store.all())[0]).toMatchObject({ state: 'refused', refusal: { code: 'not-found' } });
  });
});
