const TOKENS = [
  'paper',
  'sheet',
  'ink',
  'ink-soft',
  'rule',
  'rule-strong',
  'petrol',
  'petrol-soft',
  'on-petrol',
  'amber',
  'amber-soft',
  'band',
  'hatch',
  'wall',
] as const;
/** The house's colours as the page shows them now, day or night. */
export type TraceTheme = Readonly<Record<(typeof TOKENS)[number], string>>;

/** Reads the colours through the page itself, since only it knows whether it is day or night. */
export function readTheme(place: HTMLElement): TraceTheme {
  const probe = document.createElement('span');
  place.append(probe);
  const colours = TOKENS.map((token) => {
    probe.style.color = `var(--${token})`;
    return [token, getComputedStyle(probe).color] as const;
  });
  probe.remove();
  return Object.fromEntries(colours) as TraceTheme;
}

/** Calls back when day turns into night or the person chooses one. */
export function watchTheme(onChange: () => void): () => void {
  const scheme = matchMedia('(prefers-color-scheme: dark)');
  scheme.addEventListener('change', onChange);
  const observer = new MutationObserver(onChange);
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
  return () => {
    scheme.removeEventListener('change', onChange);
    observer.disconnect();
  };
}
