import {
  letterheadOf,
  type Letterhead,
  type PaperHeader,
  type Report,
  type ReportPreset,
  type Units,
} from '@pullbook/contracts';
import { layoutPeakStrip, renderSvg } from '@pullbook/pictures';
import { pressureFormat, type PaperFormat } from '../pressure-format.js';
import { presetWords, sealGroups, sealWords, slotWords, type PresetWords } from '../report-words.js';
import { writeInstantAndZone } from '../write-instant.js';
import { html, unsafeHtml, type Html } from './html.js';
import { page } from './page.js';

/** Where the page stands and what it links to. */
export interface ReportPlace {
  /** Path of this page, without a query. */
  readonly path: string;
  readonly styleUrl: string;
  readonly pressure: Units['pressure'];
}

const NARROW = 320;
const WIDE = 700;
const UNITS: readonly Units['pressure'][] = ['kPa', 'bar', 'psi'];

/** The customer's report as a page that needs nothing but itself and one stylesheet. @returns the document */
export function reportPage(report: Report, place: ReportPlace): string {
  const format = pressureFormat(place.pressure);
  const letterhead = letterheadOf(report.workshopName, report.paperHeader);
  const title = `${report.plate}: what your presets do`;
  return page(
    { title, styleUrl: place.styleUrl },
    html`<header class="head">
        ${headOf(letterhead, report.paperHeader)}
        <p class="soft">Visit ${report.visitNumber}</p>
        <h1>What your presets do</h1>
        <p class="car"><span class="plate">${report.plate}</span> <b>${report.model}</b></p>
      </header>
      ${report.sealHolds ? html`` : mind('Mind this first', [sealWords.broken])}
      ${mind('Before you use full boost', report.cautions)} ${unitLinks(place)}
      ${report.presets.map((preset) => presetSection(presetWords(report, preset, format), preset, format))}
      ${signature(report)}
      <p>
        <a class="act" href="${place.path}.pdf?pressure=${place.pressure}"
          >This report as a PDF, to print or keep</a
        >
      </p>
      ${footOf(letterhead)}`,
  );
}

/** Who the workshop is and how it is reached; on a telephone its number can be called. */
function headOf({ name, lines }: Letterhead, { phone }: PaperHeader): Html {
  const number = phone.replace(/[^+0-9]/g, '');
  const call = html`<p><a class="act" href="tel:${number}">Call the workshop: ${phone}</a></p>`;
  return html`<p><b>${name}</b></p>
    ${lines.map((line) => html`<p class="soft small">${line}</p>`)} ${number.length < 3 ? html`` : call}`;
}

function footOf({ footLines }: Letterhead): Html {
  if (footLines.length === 0) return html``;
  return html`<footer>${footLines.map((line) => html`<p class="soft small">${line}</p>`)}</footer>`;
}

function mind(title: string, lines: readonly string[]): Html {
  return html`<section class="mind">
    <h2>${title}</h2>
    <ol>
      ${lines.map((line) => html`<li>${line}</li>`)}
    </ol>
  </section>`;
}

function unitLinks({ path, pressure }: ReportPlace): Html {
  const links = UNITS.map((unit) => {
    const current = unit === pressure ? html` aria-current="true"` : html``;
    return html`<a href="${path}?pressure=${unit}" ${current}>${unit}</a>`;
  });
  return html`<nav class="units" aria-label="Unit of pressure">
    <span class="soft">Pressures in</span> ${links}
  </nav>`;
}

function presetSection(words: PresetWords, preset: ReportPreset, format: PaperFormat): Html {
  return html`<article class="sheet">
    <div class="name">
      <h2>${words.heading}</h2>
      <span class="slot">${slotWords(preset)}</span>
    </div>
    ${words.purpose === '' ? html`` : say('What it is for', words.purpose)} ${say('How to use it', words.use)}
    <dl class="facts">
      ${words.facts.map(
        (fact) =>
          html`<div>
            <dt>${fact.label}</dt>
            <dd>${fact.value}</dd>
            <dd>${fact.note}</dd>
          </div>`,
      )}
    </dl>
    <figure>${strip(words, NARROW, format)}${strip(words, WIDE, format)}</figure>
    <p>${words.proof}</p>
    ${words.lookedOver === '' ? html`` : html`<p>${words.lookedOver}</p>`} ${pullTable(words, format)}
  </article>`;
}

function say(title: string, text: string): Html {
  return html`<div class="say">
    <h3>${title}</h3>
    <p>${text}</p>
  </div>`;
}

/** Drawn twice, so that its words stay readable on a telephone; the stylesheet shows one. */
function strip(words: PresetWords, width: number, format: PaperFormat): Html {
  const picture = layoutPeakStrip(words.strip, { form: 'medium', width }, format);
  return unsafeHtml(renderSvg(picture, width === NARROW ? 'narrow' : 'wide'));
}

function pullTable({ pulls }: PresetWords, format: PaperFormat): Html {
  if (pulls.length === 0) return html``;
  return html`<details>
    <summary>The pulls behind these figures</summary>
    <div class="scroll">
      <table>
        <thead>
          <tr>
            <th scope="col" class="n">Pull</th>
            <th scope="col" class="n">Duty %</th>
            <th scope="col" class="n">Peak ${format.unit}</th>
            <th scope="col">Engine bay</th>
          </tr>
        </thead>
        <tbody>
          ${pulls.map(
            (pull) =>
              html`<tr>
                <td class="n">${pull.number}</td>
                <td class="n">${pull.dutyPct}</td>
                <td class="n">${format.writePeak(pull.peakKpa)}</td>
                <td>${pull.heatSoaked ? 'hot from driving' : 'normal'}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
  </details>`;
}

function signature(report: Report): Html {
  const state = report.sealHolds
    ? html`<p class="holds">${sealWords.holds}</p>`
    : html`<p class="mind"><b>${sealWords.broken}</b></p>`;
  return html`<section class="sheet">
    <h2>Signed off</h2>
    <p>
      By <b>${report.signedName}</b> on
      <b>${writeInstantAndZone(report.signedAt, report.paperHeader.timeZone)}</b>
    </p>
    ${state}
    <ol class="seal" aria-label="Seal in groups of four">
      ${sealGroups(report.sealSha256).map((group) => html`<li>${group}</li>`)}
    </ol>
    <p class="small soft">${sealWords.how}</p>
  </section>`;
}
