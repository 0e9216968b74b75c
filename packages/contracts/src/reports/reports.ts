import * as z from 'zod';
import { Id, Instant, Line } from '../basics/basics.js';
import { FoundSound, PresetEvidence } from '../sign-off/sign-off.js';
import { PaperHeader, PaperSize } from '../people/paper-header.js';
import { PressureUnit, Units } from '../people/people.js';

/** A link that lets a customer read one visit's report, and nothing else. The address is shown once. */
export const ReportLink = z
  .object({
    id: Id,
    visitId: Id,
    createdAt: Instant,
    revokedAt: Instant.nullable(),
    openedCount: z.number().int(),
  })
  .meta({ id: 'ReportLink' });
export type ReportLink = z.infer<typeof ReportLink>;
export const ReportLinkMade = ReportLink.extend({ url: z.string() }).meta({ id: 'ReportLinkMade' });
export type ReportLinkMade = z.infer<typeof ReportLinkMade>;
export const ReportLinkList = z.object({ items: z.array(ReportLink) }).meta({ id: 'ReportLinkList' });

/** A pull that stands behind a report's figures. */
export const ReportPull = z
  .object({
    presetId: Id,
    number: z.number().int(),
    dutyPct: z.number(),
    peakKpa: z.number(),
    /** Void, or not usable. */
    isVoid: z.boolean(),
    heatSoaked: z.boolean(),
    recordedAt: Instant,
  })
  .meta({ id: 'ReportPull' });
export type ReportPull = z.infer<typeof ReportPull>;

/** What a report says of one preset: who looked the car over, and what they noted, stays in the workshop. */
export const ReportPreset = PresetEvidence.extend({
  foundSound: z.array(FoundSound.pick({ afterPull: true, at: true })).default([]),
}).meta({ id: 'ReportPreset' });
export type ReportPreset = z.infer<typeof ReportPreset>;

/** What the customer reads. */
export const Report = z
  .object({
    workshopName: Line,
    /** As the workshop is reached today: it is not part of what was signed. */
    paperHeader: PaperHeader,
    units: Units,
    visitNumber: z.number().int(),
    plate: Line,
    model: Line,
    presets: z.array(ReportPreset),
    /** The visit's pulls of these presets, in order. */
    pulls: z.array(ReportPull),
    cautions: z.array(z.string()),
    signedName: Line,
    signedAt: Instant,
    sealSha256: z.string(),
    sealHolds: z.boolean(),
  })
  .meta({ id: 'Report' });
export type Report = z.infer<typeof Report>;
export const ReportParams = z.object({ token: z.string().min(20).max(100) });

/** How a paper is wanted: its size if not the workshop's, and the pressure unit if not the reader's own. */
export const PaperQuery = z.object({
  paper: PaperSize.optional(),
  pressure: PressureUnit.optional(),
});
export type PaperQuery = z.infer<typeof PaperQuery>;
