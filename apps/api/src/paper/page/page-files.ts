import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { reportCss } from './report-css.js';

export interface PageFile {
  /** Holds a hash of the content, so that it can be kept for ever. */
  readonly url: string;
  readonly type: string;
  readonly body: Buffer;
}

const FOLDER = '/report-files';
const FONTS = ['latin-400', 'latin-700', 'latin-ext-400', 'latin-ext-700'];

/** The stylesheet of the customer's page and the typeface that it names, read once. */
export function readPageFiles(): { readonly style: PageFile; readonly all: readonly PageFile[] } {
  const require = createRequire(import.meta.url);
  const fonts = new Map(
    FONTS.map((name) => {
      const file = `atkinson-hyperlegible-next-${name}-normal.woff2`;
      const body = readFileSync(require.resolve(`@fontsource/atkinson-hyperlegible-next/files/${file}`));
      return [file, fileOf(body, 'woff2', 'font/woff2')];
    }),
  );
  const css = Buffer.from(reportCss((file) => fonts.get(file)?.url ?? ''));
  const style = fileOf(css, 'css', 'text/css; charset=utf-8');
  return { style, all: [style, ...fonts.values()] };
}

function fileOf(body: Buffer, ending: string, type: string): PageFile {
  const hash = createHash('sha256').update(body).digest('hex').slice(0, 16);
  return { url: `${FOLDER}/${hash}.${ending}`, type, body };
}
