/** `?a=1&b=2` of what is set; empty text and undefined are left out. */
export function queryText(values: Readonly<Record<string, string | number | boolean | undefined>>): string {
  const search = new URLSearchParams();
  for (const [name, value] of Object.entries(values)) {
    if (value !== undefined && value !== '') search.set(name, String(value));
  }
  const text = search.toString();
  return text === '' ? '' : `?${text}`;
}
