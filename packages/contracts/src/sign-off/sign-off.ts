import * as z from 'zod';
import { Id, Instant, Line, Note, RecordRevision } from '../basics/basics.js';
import { ItemEvidence, SignOffKey } from '../checklists/checklists.js';
import { PresetProof } from '../presets/presets.js';

export const SignOffItem = z
  .object({
    key: SignOffKey,
    question: z.string(),
    /** The built-in words where the workshop says it in its own; null where they are the same. */
    builtInQuestion: z.string().nullable().default(null),
    /** What the data answer by themselves; such an item is not ticked by hand. */
    evidence: ItemEvidence.nullable().default(null),
    done: z.boolean(),
    note: Note,
  })
  .meta({ id: 'SignOffItem' });

/** That the car was looked over after a pull and nothing wrong was found. */
export const FoundSound = z
  .object({ afterPull: z.number().int(), at: Instant, note: Note, by: Line })
  .meta({ id: 'FoundSound' });
export type FoundSound = z.infer<typeof FoundSound>;

/** What the data say of one preset, filled in by the book and not by hand. */
export const PresetEvidence = z
  .object({
    presetId: Id,
    revision: z.number().int(),
    name: Line,
    slot: z.number().int(),
    kind: z.enum(['standing', 'timed-override']),
    holdSeconds: z.number().nullable(),
    purpose: Note,
    targetKpa: z.number().nullable(),
    toleranceKpa: z.number(),
    ceilingKpa: z.number().nullable(),
    dutyPct: z.number().nullable(),
    gateHoldPct: z.number().nullable(),
    accepted: z.boolean(),
    usablePullCount: z.number().int(),
    /** Mean and range of the recorded peaks at the accepted duty. */
    meanPeakKpa: z.number().nullable(),
    lowestPeakKpa: z.number().nullable(),
    highestPeakKpa: z.number().nullable(),
    provingPullNumbers: z.array(z.number().int()),
    ceilingKept: z.boolean(),
    heatSoakedPull: z.boolean(),
    /** Proven by its pulls as ISO 16269-6 asks; an accepted duty alone is less. */
    proven: z.boolean().default(false),
    proof: PresetProof.nullable().default(null),
    /** What is missing before it is proven. */
    unproven: z.array(z.string()).default([]),
    /** Looks at the car after standing pulls of this visit; sign-offs from before they were sealed name none. */
    foundSound: z.array(FoundSound).default([]),
    /** Why it cannot be signed off yet; empty when it can. */
    missing: z.array(z.string()),
  })
  .meta({ id: 'PresetEvidence' });
export type PresetEvidence = z.infer<typeof PresetEvidence>;

export const SignOff = z
  .object({
    visitId: Id,
    state: z.enum(['open', 'sealed']),
    items: z.array(SignOffItem),
    /** Of the checklist that the items come from; null for sign-offs from before checklists had revisions. */
    checklistRevision: RecordRevision.nullable(),
    presets: z.array(PresetEvidence),
    signedName: Line.nullable(),
    signedBy: Line.nullable(),
    signedAt: Instant.nullable(),
    /** SHA-256 over the canonical JSON (RFC 8785) of what the sign-off covers. */
    sealSha256: z.string().nullable(),
    /** Whether the seal still matches the stored text. */
    sealHolds: z.boolean().nullable(),
  })
  .meta({ id: 'SignOff' });
export type SignOff = z.infer<typeof SignOff>;

export const SignOffNew = z
  .object({
    items: z.array(z.object({ key: SignOffKey, done: z.boolean(), note: Note.default('') })).max(40),
    /** Of the checklist that the signer has seen: a newer one is refused. Left out: the newest counts. */
    checklistRevision: RecordRevision.optional(),
    presetIds: z.array(Id).min(1).max(20),
    signedName: Line,
  })
  .meta({ id: 'SignOffNew' });
export type SignOffNew = z.infer<typeof SignOffNew>;
