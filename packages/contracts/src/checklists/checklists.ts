import * as z from 'zod';
import { Instant, Line, RecordRevision } from '../basics/basics.js';

/** The items that every sign-off asks for, whatever else a workshop adds: its checklist as it comes, in order. */
export const signOffKeys = [
  'presets-stored-in-controller',
  'over-boost-cut-back-in-place',
  'lines-and-clamps-seen',
  'no-fault-lamps',
  'fluids-and-leaks-seen',
  'road-equipment-as-it-came',
  'customer-told-how-to-use-it',
] as const;
export type BuiltInKey = (typeof signOffKeys)[number];

/** Names an item: one of `signOffKeys`, or what the book gave to an item of the workshop's own. */
export const SignOffKey = z.string().regex(/^[a-z0-9-]{1,60}$/);

/**
 * What the data can answer by themselves, named as in `PresetEvidence`: such an item is ticked by the book, for every
 * preset that the sign-off covers, and never by hand.
 */
export const ItemEvidence = z.enum(['accepted', 'proven', 'ceilingKept', 'heatSoakedPull']);
export type ItemEvidence = z.infer<typeof ItemEvidence>;

const longestItem = 240;
const ItemText = z.string().trim().min(1).max(longestItem);

export const ChecklistItem = z
  .object({
    key: SignOffKey,
    text: ItemText,
    evidence: ItemEvidence.nullable(),
    /** For a built-in item: its own words, and why it cannot be removed; null for the workshop's own. */
    builtIn: z.object({ text: z.string(), reason: z.string() }).nullable(),
  })
  .meta({ id: 'ChecklistItem' });
export type ChecklistItem = z.infer<typeof ChecklistItem>;

/** What a sign-off asks for from now on. Sealed sign-offs keep the items that they were sealed with. */
export const SignOffChecklist = z
  .object({
    items: z.array(ChecklistItem),
    /** 1 is the built-in list; each change makes a new one. */
    revision: RecordRevision,
    changedBy: Line.nullable(),
    changedAt: Instant.nullable(),
  })
  .meta({ id: 'SignOffChecklist' });
export type SignOffChecklist = z.infer<typeof SignOffChecklist>;

/** The whole list in its new order. An item without a key is new; one that is left out is removed. */
export const SignOffChecklistChange = z
  .object({
    items: z
      .array(
        z.object({
          key: SignOffKey.nullable(),
          text: ItemText,
          evidence: ItemEvidence.nullable().default(null),
        }),
      )
      .min(signOffKeys.length)
      .max(40),
  })
  .meta({ id: 'SignOffChecklistChange' });
export type SignOffChecklistChange = z.infer<typeof SignOffChecklistChange>;
