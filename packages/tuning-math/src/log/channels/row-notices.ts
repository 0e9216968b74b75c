import type { LogNotice } from '../log-notice.js';
import type { ScanCounts } from '../reading/scan-layout.js';

/** What to tell a person about rows that were not plain rows of numbers. */
export function rowNotices(counts: ScanCounts): LogNotice[] {
  const notices: LogNotice[] = [];
  if (counts.wordRows > 0) {
    notices.push({ code: 'rows-of-words', text: `${counts.wordRows} rows without numbers were passed over` });
  }
  if (counts.shortRows > 0) {
    notices.push({
      code: 'short-rows',
      text: `${counts.shortRows} rows end early; their missing values are left out`,
    });
  }
  if (counts.longRows > 0) {
    notices.push({
      code: 'long-rows',
      text: `${counts.longRows} rows have more values than headers; the surplus is left out`,
    });
  }
  return notices;
}
