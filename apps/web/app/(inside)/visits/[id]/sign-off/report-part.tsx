'use client';

import type { ReportLink } from '@pullbook/contracts';
import { Button, ButtonLink } from '../../../../../components/button/button';
import { Skeleton } from '../../../../../components/marks/marks';
import { ProblemNote } from '../../../../../components/marks/problem-note';
import { useNotices } from '../../../../../components/notices/notices';
import { sayWhen } from '../../../../../components/time/say-when';
import {
  useMakeReportLink,
  useReportLinks,
  useRevokeReportLink,
} from '../../../../../queries/reports/use-report-links';
import styles from './sign-off.module.css';

/** What the customer gets: a link to read, or a printed page. */
export function ReportPart({ visitId }: Readonly<{ visitId: string }>) {
  const links = useReportLinks(visitId);
  const make = useMakeReportLink(visitId);
  const notices = useNotices();
  const address = make.data === undefined ? null : new URL(make.data.url, window.location.origin).href;
  const copy = async (text: string) => {
    try {
      await navigator.clipboard.writeText(text);
      notices.done('Link copied.');
    } catch {
      notices.mind('This browser does not copy by itself. Mark the address and copy it by hand.');
    }
  };
  return (
    <section className="sheet stack" aria-labelledby="report">
      <h2 id="report">Report for the customer</h2>
      <div className="row">
        <Button kind="act" busy={make.isPending} onClick={() => make.mutate()}>
          Make report link
        </Button>
        <ButtonLink href={`/api/v1/visits/${visitId}/report.pdf`} outside>
          Report (PDF)
        </ButtonLink>
      </div>
      <ProblemNote error={make.error} />
      {address === null ? null : (
        <div className={styles.made}>
          <p>
            Send this address to the customer now: it is shown only this once. Whoever has it can read the
            report, and nothing else.
          </p>
          <label className="unseen" htmlFor="report-address">
            Address of the report
          </label>
          <input
            id="report-address"
            readOnly
            className={styles.address}
            value={address}
            onFocus={(event) => event.target.select()}
          />
          <div className="row">
            <Button onClick={() => void copy(address)}>Copy link</Button>
            <ButtonLink href={address} outside>
              Open report
            </ButtonLink>
          </div>
        </div>
      )}
      {links.isPending ? <Skeleton lines={2} label="Loading the links" /> : null}
      <ProblemNote error={links.error} onRetry={() => void links.refetch()} />
      {links.data === undefined || links.data.length === 0 ? null : (
        <ul className={styles.links}>
          {links.data.map((link) => (
            <LinkLine key={link.id} link={link} visitId={visitId} />
          ))}
        </ul>
      )}
    </section>
  );
}

function LinkLine({ link, visitId }: Readonly<{ link: ReportLink; visitId: string }>) {
  const revoke = useRevokeReportLink(visitId);
  const notices = useNotices();
  const now = new Date();
  const opened =
    link.openedCount === 0
      ? 'not opened yet'
      : `opened ${link.openedCount} ${link.openedCount === 1 ? 'time' : 'times'}`;
  return (
    <li>
      <span>
        Made {sayWhen(link.createdAt, now)}, {opened}
        {link.revokedAt === null ? '' : `, revoked ${sayWhen(link.revokedAt, now)}`}
      </span>
      {link.revokedAt === null ? (
        <Button
          busy={revoke.isPending}
          onClick={() =>
            revoke.mutate(link.id, {
              onSuccess: () => notices.done('The link is revoked: it opens nothing any more.'),
              onError: (error) => notices.mind(`The link still works. ${error.message}`),
            })
          }
        >
          Revoke link
        </Button>
      ) : null}
    </li>
  );
}
