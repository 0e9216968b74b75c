import { signOffKeys, type SignOffChecklist } from '@pullbook/contracts';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestWorkshop, type TestPerson, type TestWorkshop } from '../plumbing/test-workshop.js';
import { fillTestYard, proveTestPreset, type TestYard } from '../tuning-sessions/test-yard.js';

let shop: TestWorkshop;
let yard: TestYard;
beforeEach(async () => {
  shop = await openTestWorkshop();
  yard = await fillTestYard(shop);
});
afterEach(() => shop.close());

type Wanted = { key: string | null; text: string; evidence?: string | null };
const read = async (person: TestPerson = shop.desk): Promise<SignOffChecklist> =>
  (await person.ask('GET', '/sign-off-checklist')).json();
const change = (items: readonly Wanted[], revision: number, person: TestPerson = shop.owner) =>
  person.ask('PUT', '/sign-off-checklist', {
    payload: { items },
    headers: { 'if-match': `"${revision}"` },
  });
const asItCame = async () =>
  (await read()).items.map(({ key, text, evidence }): Wanted => ({ key, text, evidence }));
const swept = { key: null, text: 'Is the passenger side swept?' };
const soaked = { key: null, text: 'One pull with the engine bay hot', evidence: 'heatSoakedPull' };
const signOff = async (items: object[], more: object = {}) =>
  shop.tuner.ask('POST', `/visits/${yard.visitId}/sign-off`, {
    payload: { items, presetIds: [yard.presetId], signedName: 'Tom Tuner', ...more },
  });
const ticked = (keys: readonly string[]) => keys.map((key) => ({ key, done: true }));

describe('GET /sign-off-checklist', () => {
  it('is the built-in list at first, each item with the reason why it stays', async () => {
    const answer = await shop.desk.ask('GET', '/sign-off-checklist');
    expect(answer.headers['etag']).toBe('"1"');
    const list: SignOffChecklist = answer.json();
    expect(list).toMatchObject({ revision: 1, changedBy: null, changedAt: null });
    expect(list.items.map(({ key }) => key)).toEqual([...signOffKeys]);
    expect(list.items.every(({ builtIn, text }) => builtIn?.text === text && builtIn.reason !== '')).toBe(
      true,
    );
  });
});

describe('PUT /sign-off-checklist', () => {
  it('makes a new revision for this workshop alone, with an event that tells who', async () => {
    const answer = await change([...(await asItCame()).reverse(), swept, soaked], 1, shop.tuner);
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['etag']).toBe('"2"');
    const list = await read();
    expect(list).toMatchObject({ revision: 2, changedBy: 'Tomas Tuner' });
    expect(list.items.map(({ key }) => key)).toEqual([...[...signOffKeys].reverse(), 'own-2-8', 'own-2-9']);
    expect(list.items.at(-1)).toEqual({ ...soaked, key: 'own-2-9', builtIn: null });
    expect((await read(shop.stranger)).revision).toBe(1);
    const event = await shop.owner.actor.db.auditEvent.findFirstOrThrow({
      where: { action: 'checklist-changed' },
    });
    expect(event.summary).toContain('revision 2');
  });

  it('keeps every revision as it was', async () => {
    await change([...(await asItCame()), swept], 1);
    await change((await asItCame()).slice(0, 7), 2);
    const rows = await shop.owner.actor.db.checklistRevision.findMany({ orderBy: { revision: 'asc' } });
    expect(rows.map(({ revision, items }) => [revision, (items as unknown[]).length])).toEqual([
      [2, 8],
      [3, 7],
    ]);
  });

  it('refuses to lose a built-in item, a lost race, empty words, the front desk, and no revision at all', async () => {
    const all = await asItCame();
    const without = await change([...all.slice(1), swept], 1);
    expect(without.statusCode).toBe(400);
    expect(without.json()).toMatchObject({ errors: [{ field: `items.${signOffKeys[0]}` }] });
    expect((await change([...all, { key: null, text: ' ' }], 1)).statusCode).toBe(400);
    expect((await change([...all, { key: null, text: 'x'.repeat(241) }], 1)).statusCode).toBe(400);
    expect((await change([...all, swept], 7)).statusCode).toBe(412);
    expect((await change([...all, swept], 1, shop.desk)).statusCode).toBe(403);
    const blind = await shop.owner.ask('PUT', '/sign-off-checklist', { payload: { items: all } });
    expect(blind.statusCode).toBe(428);
    expect((await read()).revision).toBe(1);
  });
});

describe('a sign-off by a checklist of its own', () => {
  it('asks for the own items, lets the data tick theirs, and seals what was asked', async () => {
    await change([...(await asItCame()), swept, soaked], 1);
    await proveTestPreset(shop.tuner, yard);
    const open = (await shop.desk.ask('GET', `/visits/${yard.visitId}/sign-off`)).json();
    expect(open).toMatchObject({ state: 'open', checklistRevision: 2 });
    expect(open.items.at(-1)).toMatchObject({ key: 'own-2-9', evidence: 'heatSoakedPull', done: false });
    const early = await signOff(ticked(signOffKeys));
    expect(early.json()).toMatchObject({ code: 'sign-off-incomplete', errors: [{ field: 'items.own-2-8' }] });
    const answer = await signOff(ticked([...signOffKeys, 'own-2-8']), { checklistRevision: 2 });
    expect(answer.statusCode).toBe(201);
    expect(answer.json().items.slice(7)).toMatchObject([
      { key: 'own-2-8', question: swept.text, done: true },
      { key: 'own-2-9', question: soaked.text, evidence: 'heatSoakedPull', done: true },
    ]);
  });

  it('refuses what the data do not show, whoever ticks it', async () => {
    await change([...(await asItCame()), soaked], 1);
    await proveTestPreset(shop.tuner, yard);
    await shop.owner.actor.db.pull.updateMany({ data: { heatSoaked: false } });
    const open = (await shop.desk.ask('GET', `/visits/${yard.visitId}/sign-off`)).json();
    expect(open.presets[0]).toMatchObject({ heatSoakedPull: false, missing: [] });
    const answer = await signOff(ticked([...signOffKeys, 'own-2-8']));
    expect(answer.statusCode).toBe(409);
    expect(answer.json().errors[0]).toMatchObject({ field: 'items.own-2-8' });
  });

  it('is refused where the signer has seen an older list; a sealed one keeps its items', async () => {
    await proveTestPreset(shop.tuner, yard);
    await change([...(await asItCame()), swept], 1);
    const old = await signOff(ticked(signOffKeys), { checklistRevision: 1 });
    expect(old.statusCode).toBe(412);
    expect(old.json().code).toBe('changed-meanwhile');
    await signOff(ticked([...signOffKeys, 'own-2-8']), { checklistRevision: 2 });
    await change((await asItCame()).slice(0, 7), 2);
    const sealed = (await shop.desk.ask('GET', `/visits/${yard.visitId}/sign-off`)).json();
    expect(sealed).toMatchObject({ state: 'sealed', checklistRevision: 2, sealHolds: true });
    expect(sealed.items).toHaveLength(8);
  });

  it('shows the built-in words beside what the workshop made of them', async () => {
    const all = await asItCame();
    const [first] = all;
    await change(
      all.map((item) => (item === first ? { ...item, text: 'Stored and read back?' } : item)),
      1,
    );
    const { items } = (await shop.desk.ask('GET', `/visits/${yard.visitId}/sign-off`)).json();
    expect(items[0]).toMatchObject({ question: 'Stored and read back?', builtInQuestion: first?.text });
    expect(items[1].builtInQuestion).toBeNull();
  });
});
