import { sayWhen } from '../../../../components/time/say-when';
import type { SeenPull } from '../../../../offline/pulls-seen';
import styles from './visit.module.css';

/** That the car was looked over after this pull and found sound; nothing where it was not. */
export function SoundMark({ pull }: Readonly<{ pull: SeenPull }>) {
  const { foundSoundAt, foundSoundNote, foundSoundBy } = pull;
  if (!foundSoundAt) return null;
  return (
    <span className={styles.sound}>
      <span aria-hidden="true">✓ </span>
      looked over, sound{foundSoundNote === null || foundSoundNote === '' ? '' : `: ${foundSoundNote}`}
      <span className="soft small">
        {' '}
        ({foundSoundBy}, {sayWhen(foundSoundAt, new Date())})
      </span>
    </span>
  );
}
