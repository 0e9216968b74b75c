import { describe, expect, it } from 'vitest';
import { reportExample } from '../test-records.js';
import { refusalPage } from './page.js';
import { readPageFiles } from './page-files.js';
import { reportPage } from './report-page.js';

const place = { path: '/r/secret', styleUrl: '/report-files/a.css', pressure: 'kPa' } as const;
const hostile = `<img src=x onerror=alert(1)>"'&<script>`;

describe('reportPage(report, place)', () => {
  it('tells cautions first, then each preset with target, proof, use and strip, then signature and seal', () => {
    const page = reportPage(reportExample, place);
    const wanted = [
      'Harbour Road Workshop',
      'Before you use full boost',
      'Over-boost can destroy an engine',
      'Everyday',
      'Choose slot 1 on the controller',
      '110\u00a0±\u00a04\u00a0kPa',
      'aria-label="Boost in kPa: target 110 ± 4, ceiling 125; 4 pulls',
      'Proven by 4 full-load pulls',
      'the car was looked over after pull 3 (Wed, 25 Nov 2026, ',
      'Overtaking',
      'Signed off',
      'Ines Marwell',
      'The seal holds',
      '<li>e3b0</li>',
      '/r/secret.pdf?pressure=kPa',
    ].map((text) => page.indexOf(text));
    expect(wanted).not.toContain(-1);
    expect(wanted).toEqual([...wanted].sort((a, b) => a - b));
  });

  it('escapes every text that people typed', () => {
    const page = reportPage(
      {
        ...reportExample,
        workshopName: hostile,
        plate: hostile,
        model: hostile,
        signedName: hostile,
        cautions: [hostile],
        presets: reportExample.presets.map((preset) => ({ ...preset, name: hostile, purpose: hostile })),
      },
      place,
    );
    expect(page).not.toMatch(/<img|<script|onerror=alert\(1\)>/);
    const escaped = '&lt;img src=x onerror=alert(1)&gt;&quot;&#39;&amp;&lt;script&gt;';
    expect(page.split(escaped).length - 1).toBeGreaterThanOrEqual(8);
  });

  it('has no script and nothing from elsewhere', () => {
    const page = reportPage(reportExample, place);
    expect(page).not.toMatch(/<script|javascript:|https?:|style=/i);
    expect(page).toContain('<meta name="robots" content="noindex, nofollow"');
  });

  it('marks the unit that is shown and converts every figure', () => {
    const page = reportPage(reportExample, { ...place, pressure: 'psi' });
    expect(page).toMatch(/href="\/r\/secret\?pressure=psi"\s+aria-current="true"/);
    expect(page).toContain('16.0\u00a0±\u00a00.6\u00a0psi');
    expect(page).not.toMatch(/110.*kPa<\/dd>/);
  });

  it('says what is missing for a proof in the unit that is shown, too', () => {
    const [first, ...rest] = reportExample.presets;
    if (first === undefined) throw new Error('the example has no preset');
    const unproven = ['3 more pulls; so far they can only be promised within 100.0 kPa to 120.0 kPa'];
    const presets = [{ ...first, proven: false, unproven }, ...rest];
    const page = reportPage({ ...reportExample, presets }, { ...place, pressure: 'psi' });
    expect(page).toContain('within 14.5 psi to 17.4 psi');
  });

  it('warns before everything else when the seal does not hold', () => {
    const page = reportPage({ ...reportExample, sealHolds: false }, place);
    expect(page.indexOf('The seal does not hold')).toBeLessThan(page.indexOf('Before you use full boost'));
    expect(page).not.toContain('The seal holds');
  });

  it('names every look at the car, and says nothing of any where there was none', () => {
    const [first, second] = reportExample.presets;
    if (first === undefined || second === undefined) throw new Error('the example has two presets');
    expect(reportPage({ ...reportExample, presets: [second] }, place)).not.toContain('looked over');
    const at = (day: number, afterPull: number) => ({ afterPull, at: `2026-11-${day}T12:00:00.000Z` });
    const twice = { ...first, foundSound: [at(24, 3), at(25, 6)] };
    expect(reportPage({ ...reportExample, presets: [twice] }, place)).toMatch(
      /looked over after pull 3 \(Tue, 24 Nov 2026, .{5} \w+\) and after pull 6 \(Wed, 25 Nov 2026, .{5} \w+\), and nothing wrong was found\./,
    );
  });

  it('does not call a peak proven that is not', () => {
    const presets = reportExample.presets.map((preset) => ({ ...preset, accepted: false }));
    const page = reportPage({ ...reportExample, presets }, place);
    expect(page).toContain('Not proven');
    expect(page).not.toContain('Proven peak');
  });
});

describe('refusalPage(refusal, styleUrl)', () => {
  it('escapes what it is told', () => {
    expect(refusalPage({ title: hostile, text: hostile }, '/a.css')).not.toMatch(/<img|<script/);
  });
});

describe('readPageFiles()', () => {
  it('gives one small stylesheet whose typeface comes from this book alone', () => {
    const { style, all } = readPageFiles();
    const css = style.body.toString('utf8');
    expect(style.body.length).toBeLessThan(12_000);
    const named = [...css.matchAll(/url\(([^)]+)\)/g)].map(([, url]) => url);
    expect(named).toHaveLength(4);
    for (const url of named) expect(all.map((file) => file.url)).toContain(url);
  });
});
