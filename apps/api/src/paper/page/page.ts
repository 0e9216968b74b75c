import { html, type Html } from './html.js';

/** The frame of every page that a customer sees: no script, one stylesheet, not for search engines. */
export function page(head: { readonly title: string; readonly styleUrl: string }, body: Html): string {
  return html`<!doctype html>
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <title>${head.title}</title>
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="robots" content="noindex, nofollow" />
        <meta name="theme-color" content="#f6f2e9" media="(prefers-color-scheme: light)" />
        <meta name="theme-color" content="#10171a" media="(prefers-color-scheme: dark)" />
        <link rel="stylesheet" href="${head.styleUrl}" />
      </head>
      <body>
        <main>${body}</main>
      </body>
    </html>`.html;
}

/** A page that says in plain words why there is no report here, and what to do. */
export function refusalPage(
  refusal: { readonly title: string; readonly text: string },
  styleUrl: string,
): string {
  return page(
    { title: refusal.title, styleUrl },
    html`<section class="sheet">
      <h1>${refusal.title}</h1>
      <p>${refusal.text}</p>
    </section>`,
  );
}
