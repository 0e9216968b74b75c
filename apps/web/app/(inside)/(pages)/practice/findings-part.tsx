import type { PracticeFinding } from '@pullbook/practice-car';
import styles from './practice.module.css';
import { sayFinding, sayPulls } from './say-finding';

interface FindingsPartProps {
  readonly findings: readonly PracticeFinding[];
  readonly askedAt: readonly number[];
}

/** What went well and what was risky, in that order. */
export function FindingsPart({ findings, askedAt }: FindingsPartProps) {
  const well = findings.filter(({ kind }) => kind === 'well');
  const mind = findings.filter(({ kind }) => kind === 'mind');
  return (
    <section className={styles.findings} aria-label="How it went">
      <Findings title="What went well" shape="✓" findings={well} />
      <Findings title="What to mind" shape="▲" findings={mind} isMind />
      <p className="soft small">
        {askedAt.length === 0
          ? 'You did it without looking at the advice.'
          : `You looked at the advice before ${sayPulls(askedAt)}.`}
      </p>
    </section>
  );
}

interface ListProps {
  readonly title: string;
  readonly shape: string;
  readonly findings: readonly PracticeFinding[];
  readonly isMind?: boolean;
}

function Findings({ title, shape, findings, isMind = false }: ListProps) {
  return (
    <div className={`sheet ${isMind && findings.length > 0 ? styles.minding : ''}`}>
      <h2>{title}</h2>
      {findings.length === 0 ? (
        <p className="soft">{isMind ? 'Nothing. That is how it is done.' : 'Nothing this time.'}</p>
      ) : (
        <ul className={styles.findingList}>
          {findings.map((finding) => (
            <li key={finding.code}>
              <span aria-hidden="true">{shape}</span>
              <span>{sayFinding(finding)}</span>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
