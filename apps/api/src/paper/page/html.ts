/** A piece of a page: made by `html` alone, so that every text in it has been escaped. */
export interface Html {
  readonly html: string;
}

type Value = string | number | Html | readonly Html[];

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Tag of template strings: what is put in is escaped, unless it is itself a piece of a page. */
export function html(parts: TemplateStringsArray, ...values: readonly Value[]): Html {
  return { html: parts.reduce((page, part, index) => page + write(values[index - 1] ?? '') + part) };
}

/** Takes a text as markup: for what `renderSvg` has escaped already. */
export function unsafeHtml(markup: string): Html {
  return { html: markup };
}

function write(value: Value): string {
  if (typeof value === 'string') return value.replace(/[&<>"']/g, (letter) => ESCAPES[letter] ?? letter);
  if (typeof value === 'number') return String(value);
  return 'html' in value ? value.html : value.map((one) => one.html).join('');
}
