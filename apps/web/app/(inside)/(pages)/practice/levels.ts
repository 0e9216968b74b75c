import type { PracticeLevel } from '@pullbook/practice-car';

interface LevelWords {
  readonly level: PracticeLevel;
  readonly name: string;
  readonly about: string;
}

/** How much a practice car asks of one, easiest first. */
export const levels: readonly LevelWords[] = [
  {
    level: 'calm',
    name: 'Calm',
    about: 'A sound car on a mild day. It answers much the same each time, and brings a log of every pull.',
  },
  {
    level: 'lively',
    name: 'Lively',
    about: 'A sound car in any weather. It heats up as you go, and now and then a pull ends early.',
  },
  {
    level: 'steep',
    name: 'Steep',
    about: 'A sound car that does little for a long while and then a lot. There is no log, only the gauge.',
  },
  {
    level: 'doubtful',
    name: 'Doubtful',
    about: 'Perhaps sound. Perhaps something comes loose on the way, or the target is more than it can make.',
  },
];

export const levelName = (level: PracticeLevel): string =>
  levels.find((one) => one.level === level)?.name ?? level;
