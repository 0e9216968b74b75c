import * as z from 'zod';
import { Id, Instant, Line, Note, PageQuery, RecordRevision } from '../basics/basics.js';

/** Range and grid of one setting of a controller. */
export const SettingRange = z
  .object({ min: z.number(), max: z.number(), step: z.number().positive() })
  .refine((range) => range.max > range.min, { path: ['max'], message: 'must be above min' })
  .meta({ id: 'SettingRange' });
export type SettingRange = z.infer<typeof SettingRange>;

const controllerShape = {
  name: Line,
  presetSlots: z.number().int().min(1).max(20),
  hasTimedOverride: z.boolean(),
  loop: z.enum(['open', 'closed']),
  dutyPct: SettingRange.refine((range) => range.min >= 0 && range.max <= 100, {
    message: 'duty is a share of time, 0 to 100 %',
  }),
  holdPct: SettingRange.nullable(),
  correction: SettingRange.nullable(),
  note: Note,
};

/** A *kind* of boost controller, as the workshop describes it. */
export const Controller = z
  .object({ id: Id, ...controllerShape, revision: RecordRevision, createdAt: Instant })
  .meta({ id: 'Controller' });
export type Controller = z.infer<typeof Controller>;
export const ControllerNew = z
  .object({ ...controllerShape, note: Note.default('') })
  .meta({ id: 'ControllerNew' });
export type ControllerNew = z.infer<typeof ControllerNew>;
export const ControllerChange = z.object(controllerShape).partial();
export const ControllerQuery = PageQuery;
