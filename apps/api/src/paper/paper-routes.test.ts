import { signOffKeys } from '@pullbook/contracts';
import type { LightMyRequestResponse } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import { fillTestYard, parkTestCar, proveTestPreset, type TestYard } from '../tuning-sessions/test-yard.js';
import { readPdf } from './drawing/test-pdf.js';

let shop: TestWorkshop;
let yard: TestYard;
/** A car that has arrived and that nobody has worked on. */
let fresh: string;
/** Path of the customer's report, `/r/{token}`. */
let path: string;

const open = (url: string): Promise<LightMyRequestResponse> => shop.app.inject({ method: 'GET', url });
const makeLink = async (): Promise<{ id: string; url: string }> =>
  (await shop.desk.ask('POST', `/visits/${yard.visitId}/report`)).json();

beforeAll(async () => {
  shop = await openTestWorkshop();
  yard = await fillTestYard(shop);
  fresh = (await parkTestCar(shop.tuner)).visitId;
  await proveTestPreset(shop.tuner, yard);
  const payload = {
    items: signOffKeys.map((key) => ({ key, done: true })),
    presetIds: [yard.presetId],
    signedName: 'Olga <b>Owner</b>',
  };
  const signed = await shop.owner.ask('POST', `/visits/${yard.visitId}/sign-off`, { payload });
  expect(signed.statusCode).toBe(201);
  path = (await makeLink()).url;
}, 60_000);
afterAll(() => shop.close());

describe('GET /api/v1/visits/{id}/job-sheet.pdf', () => {
  it('gives the front desk a PDF of the visit with its pulls and an address to scan', async () => {
    const answer = await shop.desk.ask('GET', `/visits/${yard.visitId}/job-sheet.pdf`);
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-type']).toBe('application/pdf');
    expect(answer.headers['content-disposition']).toMatch(/^inline; filename="job-sheet-\d+-TEST-\d+\.pdf"$/);
    expect(answer.headers['cache-control']).toBe('private, no-store');
    const pdf = await readPdf(answer.rawPayload);
    expect(pdf.texts.join(' ')).toContain('Slot 1: Dry track');
    expect(pdf.alts[0]).toContain(`/visits/${yard.visitId}`);
  });

  it("prints on the workshop's paper under its header, and on the other where it is asked for", async () => {
    const paperHeader = {
      ...{
        addressLines: ['Kiln Lane 14'],
        phone: '',
        online: '',
        registration: '',
        foot: 'Closed courses only.',
      },
      paper: 'letter',
    };
    const { revision } = (await shop.owner.ask('GET', '/workshop')).json();
    const answer = await shop.owner.ask('PATCH', '/workshop', {
      payload: { paperHeader },
      headers: { 'if-match': `"${revision}"` },
    });
    expect(answer.statusCode).toBe(200);
    for (const paper of ['job-sheet.pdf', 'report.pdf']) {
      const own = await readPdf((await shop.desk.ask('GET', `/visits/${yard.visitId}/${paper}`)).rawPayload);
      expect(own.size).toEqual([612, 792]);
      expect(own.texts[0]).toContain('Kiln Lane 14');
      expect(own.texts.at(-1)).toContain('Closed courses only.');
      const asked = await shop.desk.ask('GET', `/visits/${yard.visitId}/${paper}?paper=a4`);
      expect((await readPdf(asked.rawPayload)).size).toEqual([595, 842]);
    }
    expect((await open(path)).body).toContain('Kiln Lane 14');
  });

  it('prints a sheet to fill in by hand for a car that nobody has worked on', async () => {
    const pdf = await readPdf((await shop.desk.ask('GET', `/visits/${fresh}/job-sheet.pdf`)).rawPayload);
    expect(pdf.texts.join(' ')).toContain('Preset to be agreed');
  });

  it('follows the units of the person who prints, unless another is asked for', async () => {
    const sheet = `/visits/${yard.visitId}/job-sheet.pdf`;
    const own = await readPdf((await shop.desk.ask('GET', sheet)).rawPayload);
    expect(own.texts.join(' ')).toContain('Peak kPa');
    const asked = await shop.desk.ask('GET', `${sheet}?paper=letter&pressure=psi`);
    const other = await readPdf(asked.rawPayload);
    expect(other.texts.join(' ')).toContain('Peak psi');
    expect(other.size).toEqual([612, 792]);
  });

  it('names the field for a paper or unit that there is not', async () => {
    const answer = await shop.desk.ask('GET', `/visits/${yard.visitId}/job-sheet.pdf?paper=a3`);
    expect(answer.statusCode).toBe(400);
    expect(answer.body).toContain('paper');
  });

  it('finds nothing for another workshop, and asks a passer-by to sign in', async () => {
    const sheet = `/visits/${yard.visitId}/job-sheet.pdf`;
    expect((await shop.stranger.ask('GET', sheet)).statusCode).toBe(404);
    expect((await open(`/api/v1${sheet}`)).statusCode).toBe(401);
  });
});

describe('GET /api/v1/visits/{id}/report.pdf', () => {
  it('gives the workshop the report of a signed-off visit without counting an opening', async () => {
    const before = (await shop.desk.ask('GET', `/visits/${yard.visitId}/report`)).json();
    const answer = await shop.desk.ask('GET', `/visits/${yard.visitId}/report.pdf`);
    const pdf = await readPdf(answer.rawPayload);
    expect(pdf.texts.join(' ')).toContain('Olga <b>Owner</b>');
    expect(pdf.texts.join(' ')).toContain('The seal holds');
    expect((await shop.desk.ask('GET', `/visits/${yard.visitId}/report`)).json()).toEqual(before);
  });

  it('says that there is none yet before the sign-off, and finds nothing for another workshop', async () => {
    const answer = await shop.desk.ask('GET', `/visits/${fresh}/report.pdf`);
    expect(answer.statusCode).toBe(409);
    expect(answer.json()).toMatchObject({ code: 'sign-off-incomplete' });
    const theirs = await shop.stranger.ask('GET', `/visits/${yard.visitId}/report.pdf`);
    expect(theirs.statusCode).toBe(404);
  });
});

describe('GET /r/{token}', () => {
  it('shows the report to whoever holds the link, without sign-in and without script', async () => {
    const answer = await open(path);
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(answer.body).toContain('Dry track');
    expect(answer.body).toContain('Olga &lt;b&gt;Owner&lt;/b&gt;');
    expect(answer.body).toContain('The seal holds');
    expect(answer.body).not.toContain('<script');
  });

  it('is not to be kept, indexed, framed or told on, and may load its own stylesheet and typeface alone', async () => {
    const { headers } = await open(path);
    expect(headers['cache-control']).toBe('private, no-store');
    expect(headers['x-robots-tag']).toBe('noindex, nofollow');
    expect(headers['referrer-policy']).toBe('no-referrer');
    expect(headers['content-security-policy']).toBe(
      "default-src 'none'; style-src 'self'; font-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    );
  });

  it('names a stylesheet and typefaces that are there and may be kept', async () => {
    const style = /href="(\/report-files\/[^"]+)"/.exec((await open(path)).body)?.[1] ?? '';
    const css = await open(style);
    expect(css.statusCode).toBe(200);
    expect(css.headers['content-type']).toContain('text/css');
    expect(css.headers['cache-control']).toContain('immutable');
    const font = /url\(([^)]+)\)/.exec(css.body)?.[1] ?? '';
    expect((await open(font)).headers['content-type']).toBe('font/woff2');
  });

  it('gives the same as a PDF whose code leads back to the page', async () => {
    const answer = await open(`${path}.pdf?paper=letter&pressure=bar`);
    expect(answer.headers['content-type']).toBe('application/pdf');
    const pdf = await readPdf(answer.rawPayload);
    expect(pdf.size).toEqual([612, 792]);
    expect(pdf.alts[0]).toContain(path);
    expect(pdf.texts.join(' ')).toContain('Peak bar');
  });

  it('shows another unit on request', async () => {
    expect((await open(`${path}?pressure=psi`)).body).toContain('20.3\u00a0±\u00a00.6\u00a0psi');
  });

  it('counts each opening', async () => {
    const opened = async (): Promise<number> =>
      (await shop.desk.ask('GET', `/visits/${yard.visitId}/report`)).json().items[0].openedCount;
    const before = await opened();
    await open(path);
    expect(await opened()).toBe(before + 1);
  });

  it.each([
    ['a token that never was one', '/r/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA'],
    ['one that is cut short', '/r/abc'],
    ['one that is far too long', `/r/${'a'.repeat(150)}`],
    ['a file of an unknown token', '/r/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA.pdf'],
  ])('answers %s with a page that says there is no report here', async (_, url) => {
    const answer = await open(url);
    expect(answer.statusCode).toBe(404);
    expect(answer.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(answer.body).toContain('There is no report here');
    expect(answer.headers['cache-control']).toBe('private, no-store');
  });

  it('answers a unit that there is not with a page that says what to do', async () => {
    const answer = await open(`${path}?pressure=feet`);
    expect(answer.statusCode).toBe(400);
    expect(answer.body).toContain('Open the link again as it was sent to you');
  });

  it('answers a withdrawn link with a kind page and 410, as page and as file', async () => {
    const link = await makeLink();
    expect((await open(link.url)).statusCode).toBe(200);
    await shop.desk.ask('POST', `/report-links/${link.id}/revoke`);
    for (const url of [link.url, `${link.url}.pdf`]) {
      const answer = await open(url);
      expect(answer.statusCode).toBe(410);
      expect(answer.body).toContain('This report was withdrawn');
      expect(answer.body).not.toContain('Dry track');
    }
    expect((await open(path)).statusCode).toBe(200);
  });

  it('says so on top when somebody changed the sealed text behind the book’s back', async () => {
    const own = await shop.owner.actor.db.signOff.findFirstOrThrow({ where: { visitId: yard.visitId } });
    const forged = own.sealedText.replace('"targetKpa":140', '"targetKpa":150');
    expect(forged).not.toBe(own.sealedText);
    const write = (sealedText: string): Promise<unknown> =>
      shop.owner.actor.db.signOff.update({ where: { id: own.id }, data: { sealedText } });
    await write(forged);
    const { body } = await open(path);
    await write(own.sealedText);
    expect(body.indexOf('The seal does not hold')).toBeLessThan(body.indexOf('Before you use full boost'));
    expect(body).not.toContain('The seal holds');
  });
});
