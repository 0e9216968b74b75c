import { pictureCss } from '@pullbook/pictures';

const day = `--paper:#f6f2e9;--sheet:#fffdf8;--ink:#1b2225;--ink-soft:#55605f;--rule:#d8d1c1;--rule-strong:#b7ae9a;
--petrol:#0d5660;--on-petrol:#fff;--amber:#8a4b00;--amber-soft:#f8e6c4;--band:#cfe2df;--hatch:#8fb3af;--wall:#1b2225;`;
const night = `--paper:#10171a;--sheet:#182125;--ink:#efe9dc;--ink-soft:#a9b3b1;--rule:#2b363a;--rule-strong:#46545a;
--petrol:#6cc3c9;--on-petrol:#08191c;--amber:#f3b04b;--amber-soft:#3a2b12;--band:#1f4247;--hatch:#3c757b;--wall:#efe9dc;`;

/**
 * The one stylesheet of the customer's report page: for a telephone first, day and night, and paper.
 *
 * @param fontUrl address of a font file by its name in the package
 */
export function reportCss(fontUrl: (file: string) => string): string {
  const face = (subset: string, weight: number, range: string): string =>
    `@font-face{font-family:"Atkinson Hyperlegible Next";font-weight:${weight};font-display:swap;` +
    `src:url(${fontUrl(`atkinson-hyperlegible-next-${subset}-${weight}-normal.woff2`)}) format("woff2");unicode-range:${range}}`;
  const faces = [400, 700].flatMap((weight) => [
    face('latin', weight, latinRange),
    face('latin-ext', weight, moreRange),
  ]);
  return `${faces.join('')}${page}${pictureCss}${parts}${print}`;
}

const latinRange =
  'U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+2000-206F,U+20AC,U+2122,U+2212';
const moreRange =
  'U+0100-02BA,U+02BD-02C5,U+02C7-02CC,U+1E00-1E9F,U+1EF2-1EFF,U+20A0-20AB,U+20AD-20C0,U+2113';

const page = `
:root{color-scheme:light dark;${day}}
@media (prefers-color-scheme:dark){:root{${night}}}
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:1.0625rem/1.5 "Atkinson Hyperlegible Next",system-ui,sans-serif;
font-variant-numeric:tabular-nums;overflow-wrap:anywhere;-webkit-text-size-adjust:100%}
main{max-width:760px;margin:0 auto;padding:20px 16px 40px;display:grid;grid-template-columns:minmax(0,1fr);gap:18px}
h1,h2,h3,p,ul,ol,dl,dd,figure{margin:0;padding:0}
h1{font-size:1.625rem;line-height:1.2}
h2{font-size:1.3125rem;line-height:1.25}
h3{font-size:1.0625rem}
a{color:var(--petrol);text-underline-offset:.18em}
:focus-visible{outline:3px solid var(--petrol);outline-offset:2px;border-radius:2px}
`;

const parts = `
.soft{color:var(--ink-soft)}
.small{font-size:0.9375rem}
.head{display:grid;gap:8px}
.car{display:flex;flex-wrap:wrap;gap:8px 14px;align-items:center}
.plate{font-weight:700;font-size:1.5625rem;letter-spacing:.04em;line-height:1.2;border:2px solid var(--ink);border-radius:5px;padding:2px 12px}
.sheet{background:var(--sheet);border:1px solid var(--rule);border-radius:10px;padding:18px 16px;display:grid;grid-template-columns:minmax(0,1fr);gap:14px}
.mind{background:var(--amber-soft);border-left:6px solid var(--amber);border-radius:4px;padding:14px 16px;display:grid;gap:8px}
.mind ol{padding-left:1.5em;display:grid;gap:5px}
.mind li::marker{font-weight:700}
.name{display:flex;flex-wrap:wrap;justify-content:space-between;gap:4px 14px;align-items:baseline}
.facts{display:grid;grid-template-columns:repeat(auto-fit,minmax(130px,1fr));gap:12px 16px;border-top:1px solid var(--rule);border-bottom:1px solid var(--rule);padding:12px 0}
.facts dt{color:var(--ink-soft);font-size:0.9375rem}
.facts dd{font-weight:700;font-size:1.1875rem;line-height:1.3}
.facts dd+dd{font-weight:400;font-size:0.9375rem;color:var(--ink-soft)}
.slot{border:1px solid var(--rule-strong);border-radius:5px;padding:1px 9px;font-weight:700}
.say{display:grid;gap:2px}
.scroll{overflow-x:auto}
table{border-collapse:collapse;width:100%}
caption{text-align:left;font-weight:700;padding-bottom:4px}
td,th{padding:6px 10px 6px 0;border-bottom:1px solid var(--rule);text-align:left;vertical-align:top}
th{font-weight:400;font-size:0.9375rem;color:var(--ink-soft)}
.n{text-align:right}
summary{cursor:pointer;padding:10px 0;min-height:44px;color:var(--petrol);text-decoration:underline;text-underline-offset:.18em}
.seal{display:grid;grid-template-columns:repeat(4,max-content);gap:2px 18px;font-weight:700;font-size:1.125rem;letter-spacing:.04em}
.seal li{list-style:none}
.holds::before{content:"✓ ";font-weight:700}
.units{display:flex;flex-wrap:wrap;gap:4px 6px;align-items:center}
.units a,.act{display:inline-flex;align-items:center;justify-content:center;min-height:44px;min-width:48px;padding:0 14px;border-radius:8px;border:1px solid var(--rule-strong);text-decoration:none}
.units a[aria-current]{background:var(--petrol);border-color:var(--petrol);color:var(--on-petrol);font-weight:700}
.act{border-color:var(--petrol);font-weight:700;justify-self:start}
.wide{display:none}
@media (min-width:640px){main{padding-top:32px;gap:20px}.sheet{padding:22px 24px}.narrow{display:none}.wide{display:block}.seal{grid-template-columns:repeat(8,max-content)}}
`;

const print = `
@media print{
:root{color-scheme:light;${day}--paper:#fff;--sheet:#fff;--amber-soft:#fff;--rule:#999}
body{font-size:11pt}
main{max-width:none;padding:0;gap:12pt}
.sheet{border:0;border-top:1.5pt solid #000;border-radius:0;padding:10pt 0}
.mind{border:1.5pt solid #000;border-left-width:6pt}
.sheet,.mind,figure{break-inside:avoid}
.units,.act,summary{display:none}
.narrow{display:none}.wide{display:block}
*{-webkit-print-color-adjust:exact;print-color-adjust:exact}
}
`;
