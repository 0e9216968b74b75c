'use client';

import type { SignOff } from '@pullbook/contracts';
import { ButtonLink } from '../../../../../components/button/button';
import { Mind, Skeleton } from '../../../../../components/marks/marks';
import { NotLoaded } from '../../../../../components/marks/not-loaded';
import { sayDate } from '../../../../../components/time/say-when';
import { useSignedInMe } from '../../../../../queries/people/use-me';
import { useSignOff } from '../../../../../queries/sign-off/use-sign-off';
import { ItemWords } from './checklist-items';
import { EvidencePart } from './evidence-part';
import { ReportPart } from './report-part';
import { SealForm } from './seal-form';
import styles from './sign-off.module.css';

/** Is it fit to leave? And once it is: what does the customer get? */
export function SignOffScreen({ visitId }: Readonly<{ visitId: string }>) {
  const signOff = useSignOff(visitId);
  const me = useSignedInMe();
  if (signOff.data === undefined) {
    return (
      <main id="content" className={styles.page}>
        <NotLoaded what="visit" error={signOff.error} onRetry={() => void signOff.refetch()} />
        {signOff.isPending ? <Skeleton lines={8} label="Loading the sign-off" /> : null}
      </main>
    );
  }
  const { data } = signOff;
  return (
    <main id="content" className={styles.page}>
      <div className="row">
        <h2 className={styles.title}>Sign-off</h2>
        <span className="grow" />
        <ButtonLink href={`/api/v1/visits/${visitId}/job-sheet.pdf`} outside>
          Job sheet (PDF)
        </ButtonLink>
      </div>
      {data.state === 'sealed' ? <Sealed signOff={data} /> : null}
      {data.state === 'sealed' ? <ReportPart visitId={visitId} /> : null}
      {data.state === 'open' && me.member.role !== 'desk' ? (
        <SealForm visitId={visitId} signOff={data} />
      ) : (
        <>
          {data.presets.map((evidence) => (
            <EvidencePart key={evidence.presetId} evidence={evidence} />
          ))}
          {data.state === 'open' ? (
            <Mind title="Not signed off yet">
              <p>A tuner or the owner signs off. Report and hand-over follow then.</p>
            </Mind>
          ) : null}
        </>
      )}
    </main>
  );
}

function Sealed({ signOff }: Readonly<{ signOff: SignOff }>) {
  return (
    <section className={`sheet stack ${styles.sealed}`} aria-labelledby="sealed">
      <h2 id="sealed">
        <span aria-hidden="true">✓ </span>Signed off and sealed
      </h2>
      <p>
        {signOff.signedName}
        {signOff.signedAt === null ? '' : `, ${sayDate(signOff.signedAt)}`}
        {signOff.signedBy === null || signOff.signedBy === signOff.signedName
          ? ''
          : `, signed in as ${signOff.signedBy}`}
      </p>
      <ul className={styles.sealedItems}>
        {signOff.items.map((item) => (
          <li key={item.key}>
            <span aria-hidden="true">{item.done ? '✓' : '○'} </span>
            <ItemWords item={item} />
            {item.done ? '' : ' (not done)'}
            {item.note === '' ? '' : `: ${item.note}`}
          </li>
        ))}
      </ul>
      {signOff.sealHolds === false ? (
        <Mind title="The seal does not hold">
          <p>What is stored is not what was signed. Tell the owner before the car is handed over.</p>
        </Mind>
      ) : null}
      <p className={`small soft ${styles.seal}`}>
        {signOff.sealHolds === true ? 'The seal holds. ' : ''}SHA-256 {signOff.sealSha256}
      </p>
    </section>
  );
}
