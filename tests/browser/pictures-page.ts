import type { Screen } from './screens/screen.js';

/** What a picture is as large as. */
export const sizes = {
  phone: { width: 360, height: 780 },
  tablet: { width: 1180, height: 820 },
  desktop: { width: 1440, height: 900 },
} as const;

export interface PictureLook {
  readonly size: keyof typeof sizes;
  readonly scheme: 'light' | 'dark';
}

const everyLook: readonly PictureLook[] = (['phone', 'tablet', 'desktop'] as const).flatMap((size) =>
  (['light', 'dark'] as const).map((scheme) => ({ size, scheme })),
);
/** A state of a page that is shown in every look already. */
const twoLooks: readonly PictureLook[] = [
  { size: 'tablet', scheme: 'light' },
  { size: 'phone', scheme: 'dark' },
];

/** The looks that a screen is pictured in. */
export const picturesOf = ({ isPage }: Screen): readonly PictureLook[] =>
  isPage === true ? everyLook : twoLooks;

export const pictureName = ({ name }: Screen, { size, scheme }: PictureLook): string =>
  `${name}-${size}-${scheme}.png`;

/** The page that lists every picture, by the address of its screen. */
export function picturesPage(screens: readonly Screen[]): string {
  const places = [...new Set(screens.map(placeOf))].sort();
  const parts = places.map((place) => {
    const lines = screens.filter((screen) => placeOf(screen) === place).map(lineOf);
    return `## ${place}\n\n${lines.join('\n')}\n`;
  });
  return `# Pictures of every screen and state\n\n${[about, ...parts].join('\n')}`;
}

const about =
  'Taken by `npm run docs:pictures` from the list in `tests/browser/screens`, which also holds each of them to its ' +
  'checks.\nWhich question each screen answers: [the question each screen answers](../screens.md).\n';

const placeOf = ({ route, name }: Screen): string =>
  route === null ? `The server’s own: ${name}` : `\`${route}\``;

function lineOf(screen: Screen): string {
  const links = picturesOf(screen).map(
    (look) => `[${look.size} ${look.scheme}](${pictureName(screen, look)})`,
  );
  return `- **${screen.name}** (${screen.who}): ${links.join(', ')}`;
}
