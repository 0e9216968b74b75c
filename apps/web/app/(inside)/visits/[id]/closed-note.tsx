import type { Visit } from '@pullbook/contracts';
import { ButtonLink } from '../../../../components/button/button';
import styles from './visit.module.css';

/** That a visit is closed, what that means, and where its papers are. */
export function ClosedNote({ visit }: Readonly<{ visit: Visit }>) {
  return (
    <section className={`sheet ${styles.closed}`} aria-labelledby="closed">
      <div>
        <h2 id="closed">This visit is closed</h2>
        <p>
          {visit.stage === 'collected'
            ? 'It is signed off and the car was collected.'
            : 'It is signed off and the car is ready.'}{' '}
          Nothing more is advised or recorded in it; all of it stays readable.
        </p>
        <p className="small soft">For more work on this car, book a new visit.</p>
      </div>
      <div className="row">
        <ButtonLink href={`/visits/${visit.id}/sign-off`}>Sign-off and report</ButtonLink>
        <ButtonLink href={`/api/v1/visits/${visit.id}/job-sheet.pdf`} outside>
          Job sheet (PDF)
        </ButtonLink>
      </div>
    </section>
  );
}
