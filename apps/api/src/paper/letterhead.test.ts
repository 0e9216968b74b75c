import { emptyPaperHeader, letterheadOf, PaperHeader } from '@pullbook/contracts';
import { describe, expect, it } from 'vitest';
import { readPdf } from './drawing/test-pdf.js';
import { jobSheetPdf } from './job-sheet-pdf.js';
import { reportPdf } from './report-pdf.js';
import { reportPage } from './page/report-page.js';
import { reportExample, sheetExample } from './test-records.js';

const header: PaperHeader = {
  addressLines: ['Kiln Lane 14', '0042 Harrowmere'],
  phone: '+00 555 0100',
  online: 'desk@harbour-road.example',
  registration: 'Trade register 000417, tax number 00/123/4567',
  foot: 'Work on closed courses only. Ask before you change anything.',
  paper: 'letter',
  timeZone: 'Asia/Kathmandu',
};
const a4 = { paper: 'a4', pressure: 'kPa' } as const;
const address = { url: 'https://book.example/r/secret', purpose: 'QR code' };
const place = { path: '/r/secret', styleUrl: '/a.css', pressure: 'kPa' } as const;
const longest: PaperHeader = {
  addressLines: Array.from({ length: 4 }, () => 'W'.repeat(80)),
  phone: '5'.repeat(40),
  online: 'w'.repeat(100),
  registration: 'W'.repeat(120),
  foot: 'W'.repeat(160),
  paper: 'a4',
  timeZone: '',
};

describe('letterheadOf(name, header)', () => {
  it('joins the address and the ways to be reached, and keeps foot and registration for the foot', () => {
    expect(letterheadOf('Harbour Road Workshop', header)).toEqual({
      name: 'Harbour Road Workshop',
      lines: ['Kiln Lane 14 · 0042 Harrowmere', '+00 555 0100 · desk@harbour-road.example'],
      footLines: [header.foot, header.registration],
    });
  });

  it('leaves out what is empty', () => {
    expect(letterheadOf('A', emptyPaperHeader)).toEqual({ name: 'A', lines: [], footLines: [] });
    expect(letterheadOf('A', { ...emptyPaperHeader, phone: '1' }).lines).toEqual(['1']);
  });
});

describe('PaperHeader', () => {
  it.each(['two\nlines', 'tab\there', 'bell\u0007', 'turned\u202egnp'])('refuses %j as a line', (text) => {
    expect(PaperHeader.safeParse({ ...header, phone: text }).success).toBe(false);
    expect(PaperHeader.safeParse({ ...header, addressLines: [text] }).success).toBe(false);
  });

  it('takes lines up to their length and no longer', () => {
    expect(PaperHeader.safeParse(longest).success).toBe(true);
    for (const more of [
      { phone: '5'.repeat(41) },
      { foot: 'x'.repeat(161) },
      { addressLines: Array(5).fill('a') },
    ])
      expect(PaperHeader.safeParse({ ...longest, ...more }).success).toBe(false);
  });
});

describe('job sheet and report with a paper header', () => {
  it('tell times in the workshop’s own zone, and which it is', async () => {
    const sheet = await readPdf(await jobSheetPdf({ ...sheetExample, paperHeader: header }, a4));
    expect(sheet.texts[0]).toContain('printed Wed, 25 Nov 2026, 14:45 GMT+5:45');
    const report = { ...reportExample, paperHeader: header };
    const { texts } = await readPdf(await reportPdf(report, address, a4));
    expect(texts.join(' ')).toContain('Wed, 25 Nov 2026, 21:25 GMT+5:45');
    expect(reportPage(report, place)).toContain('Wed, 25 Nov 2026, 21:25 GMT+5:45');
  });

  it('read a header from before there was a zone', () => {
    const before = { ...header, timeZone: undefined };
    expect(PaperHeader.parse(before).timeZone).toBe('');
  });

  it('stand under name, address and telephone, with foot and registration on every page', async () => {
    const files = [
      await jobSheetPdf({ ...sheetExample, paperHeader: header }, a4),
      await reportPdf({ ...reportExample, paperHeader: header }, address, a4),
    ];
    for (const file of files) {
      const { texts, claimsUa, isTagged } = await readPdf(file);
      expect({ claimsUa, isTagged }).toEqual({ claimsUa: true, isTagged: true });
      expect(texts[0]).toContain('Harbour Road Workshop');
      expect(texts[0]).toContain('Kiln Lane 14 · 0042 Harrowmere');
      expect(texts[0]).toContain('+00 555 0100 · desk@harbour-road.example');
      for (const text of texts) {
        expect(text).toContain(header.foot);
        expect(text).toContain(header.registration);
      }
    }
  });

  it('wrap the longest lines at the head, cut those at the foot with a mark, and lose none of the content', async () => {
    const { texts } = await readPdf(await jobSheetPdf({ ...sheetExample, paperHeader: longest }, a4));
    const plain = await readPdf(await jobSheetPdf(sheetExample, a4));
    const head = (texts[0] ?? '').slice(0, (texts[0] ?? '').indexOf('Job sheet, visit'));
    expect(head.match(/W/g)).toHaveLength(320 + (head.match(/Workshop/g)?.length ?? 0));
    for (const text of texts) expect(text).toContain('W…');
    for (const wanted of sheetExample.cautions) expect(texts.join(' ')).toContain(wanted);
    expect(texts.length).toBeGreaterThanOrEqual(plain.pageCount);
  });
});

describe('report page with a paper header', () => {
  it('shows how the workshop is reached, with a number that a telephone can call', () => {
    const page = reportPage({ ...reportExample, paperHeader: header }, place);
    for (const wanted of ['Kiln Lane 14 · 0042 Harrowmere', 'href="tel:+005550100"', header.registration])
      expect(page).toContain(wanted);
    expect(reportPage(reportExample, place)).not.toContain('tel:');
  });

  it('escapes what was typed, and calls nothing but digits', () => {
    const hostile = `<script>"'&`;
    const page = reportPage(
      {
        ...reportExample,
        paperHeader: {
          addressLines: [hostile],
          phone: `javascript:alert(1)"555 0100`,
          online: hostile,
          registration: hostile,
          foot: hostile,
          paper: 'a4',
          timeZone: '',
        },
      },
      place,
    );
    expect(page).not.toContain('<script');
    expect(page).toContain('href="tel:15550100"');
    expect(page).toContain('&lt;script&gt;&quot;&#39;&amp;');
  });
});
