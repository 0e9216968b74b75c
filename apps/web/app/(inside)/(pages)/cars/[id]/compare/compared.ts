/** One line of a comparison: what it is about, how it stands on either side, what changed in words. */
export interface Compared {
  readonly what: string;
  readonly left: string;
  readonly right: string;
  readonly change: string;
  readonly isSame: boolean;
}

/** Lines that belong together, such as those of one preset. */
export interface ComparedGroup {
  readonly title: string;
  readonly lines: readonly Compared[];
}

const nothing = '–';

/** Two texts beside each other. */
export function compareText(what: string, left: string | null, right: string | null): Compared {
  const [a, b] = [left ?? '', right ?? ''];
  const isSame = a === b;
  const change = isSame ? 'the same' : a === '' ? 'added' : b === '' ? 'no longer given' : 'changed';
  return { what, left: a === '' ? nothing : a, right: b === '' ? nothing : b, change, isSame };
}

/** How figures of one kind are written, and how much of a difference is worth a word. */
export interface FigureForm {
  readonly write: (value: number) => string;
  /** Amount of a difference, written without its sign; `write` where left out. */
  readonly writeDifference?: (amount: number) => string;
  /** Differences below this are none: what the figure is written to. */
  readonly least: number;
  /** What a greater and a smaller figure are called; 'higher' and 'lower' where left out. */
  readonly words?: readonly [greater: string, smaller: string];
}

/** Two figures beside each other, null where there is none; the change goes from left to right. */
export function compareFigure(
  what: string,
  left: number | null,
  right: number | null,
  form: FigureForm,
): Compared {
  const sides = { what, left: written(left, form), right: written(right, form) };
  if (left === null || right === null) {
    const isSame = left === right;
    return { ...sides, change: isSame ? 'neither has one' : left === null ? 'set' : 'no longer set', isSame };
  }
  const by = right - left;
  if (Math.abs(by) < form.least) return { ...sides, change: 'the same', isSame: true };
  const amount = (form.writeDifference ?? form.write)(Math.abs(by));
  const [greater, smaller] = form.words ?? ['higher', 'lower'];
  return { ...sides, change: `${amount} ${by > 0 ? greater : smaller}`, isSame: false };
}

const written = (value: number | null, form: FigureForm): string =>
  value === null ? nothing : form.write(value);
