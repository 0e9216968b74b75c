import type { OpenSession, WaitingLog } from '@pullbook/contracts';
import type { Choice } from '../../../../components/field/choice-field';
import { sayWhen } from '../../../../components/time/say-when';

/** The open sessions to choose from: what something speaks for on top, then the latest first. */
export function choicesOf({ suggestions }: WaitingLog, sessions: readonly OpenSession[]): Choice[] {
  const rank = new Map(suggestions.map(({ tuningSessionId }, index) => [tuningSessionId, index]));
  const rankOf = ({ tuningSessionId }: OpenSession) => rank.get(tuningSessionId) ?? rank.size;
  const sorted = [...sessions].sort((a, b) => rankOf(a) - rankOf(b));
  return [
    { value: '', label: 'Choose a car and session' },
    ...sorted.map((session) => ({
      value: session.tuningSessionId,
      label: `${session.plate} ${session.model}, session ${session.number}, ${session.place}, ${sayWhen(session.startedAt, new Date())}`,
    })),
  ];
}
