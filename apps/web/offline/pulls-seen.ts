import type { Pull } from '@pullbook/contracts';
import type { OutboxEntry } from './outbox-entry';

/** A pull as a screen shows it: on record, or written down on this device and not yet sent. */
export type SeenPull = Pull & { readonly unsent?: boolean };

/**
 * The pulls of one preset, with what this device has written down: pulls that wait get the next numbers in their
 * order, pulls just sent are there before the list has them, and what was voided here is void here at once; so is a car
 * that was found sound here.
 *
 * @param onRecord pulls as the server told them last
 * @param belongs whether a pull is of the preset and the tuning sessions in sight
 */
export function pullsSeen(
  onRecord: readonly Pull[],
  entries: readonly OutboxEntry[],
  belongs: (pull: Pull) => boolean,
): SeenPull[] {
  const seen: SeenPull[] = [...onRecord].sort((a, b) => a.number - b.number);
  const inOrder = [...entries].sort((a, b) => a.order - b.order);
  for (const pull of inOrder.flatMap(pullsMade).filter(belongs)) {
    if (!seen.some((one) => one.id === pull.id)) seen.push(pull);
  }
  seen.sort((a, b) => a.number - b.number);
  for (const entry of inOrder) {
    const { pull } = entry.shows;
    if (pull === undefined || !belongs(pull) || pullsMade(entry).length > 0) continue;
    // Stored, but its answer was lost on the way: it is on record, and will be told so when it is sent again.
    if (seen.some((one) => isTheSame(one, pull))) continue;
    seen.push({ ...pull, id: entry.key, number: (seen.at(-1)?.number ?? 0) + 1, unsent: true });
  }
  return withSoundMarks(withVoids(seen, inOrder), inOrder);
}

function pullsMade({ state, answer }: OutboxEntry): Pull[] {
  if (state !== 'sent') return [];
  const made = answer as { items?: unknown } | null;
  const items: unknown[] = Array.isArray(made?.items) ? made.items : [answer];
  return items.filter(isPull);
}

function isPull(value: unknown): value is Pull {
  const pull = value as Partial<Pull> | null;
  return typeof pull?.number === 'number' && typeof pull.peakKpa === 'number';
}

function isTheSame(a: Pull, b: Pull): boolean {
  const [at, bt] = [Date.parse(a.recordedAt), Date.parse(b.recordedAt)];
  return at === bt && a.presetId === b.presetId && a.dutyPct === b.dutyPct && a.peakKpa === b.peakKpa;
}

function withVoids(pulls: readonly SeenPull[], entries: readonly OutboxEntry[]): SeenPull[] {
  const voids = entries.flatMap(({ shows, madeAt }) =>
    shows.voided === undefined ? [] : [{ ...shows.voided, madeAt }],
  );
  return pulls.map((pull) => {
    const hit = voids.find(({ pullId }) => isOf(pullId, pull, entries));
    if (hit === undefined || pull.voidedAt !== null) return pull;
    return { ...pull, voidedAt: hit.madeAt, voidReason: hit.reason };
  });
}

/** What the server has refused says nothing of the car: the advice must not rest on it. */
function withSoundMarks(pulls: readonly SeenPull[], entries: readonly OutboxEntry[]): SeenPull[] {
  const marks = entries.flatMap(({ shows, madeAt, state }) =>
    shows.foundSound === undefined || state === 'refused' ? [] : [{ ...shows.foundSound, madeAt }],
  );
  return pulls.map((pull) => {
    const hit = marks.find(({ pullId }) => isOf(pullId, pull, entries));
    if (hit === undefined || isMarked(pull)) return pull;
    return { ...pull, foundSoundAt: hit.madeAt, foundSoundNote: hit.note, foundSoundBy: hit.by };
  });
}

const isMarked = ({ foundSoundAt }: SeenPull) => (foundSoundAt ?? null) !== null;

const isOf = (pullId: string, pull: SeenPull, entries: readonly OutboxEntry[]) =>
  pullId === pull.id || idOf(pullId, entries) === pull.id;

/** The id of the record that an entry has made, where a screen knew the pull by its entry's key. */
function idOf(key: string, entries: readonly OutboxEntry[]): string | null {
  const answer = entries.find((entry) => entry.key === key)?.answer as { id?: string } | null | undefined;
  return answer?.id ?? null;
}
