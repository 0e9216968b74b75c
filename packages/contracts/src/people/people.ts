import * as z from 'zod';
import { Id, Instant, Line, RecordRevision } from '../basics/basics.js';
import { PaperHeader } from './paper-header.js';

export const Role = z.enum(['owner', 'tuner', 'desk']);
export type Role = z.infer<typeof Role>;

export const PressureUnit = z.enum(['kPa', 'bar', 'psi']);
export const TemperatureUnit = z.enum(['C', 'F']);

/** The units that one person reads; the API itself always speaks kPa gauge and °C. */
export const Units = z.object({ pressure: PressureUnit, temperature: TemperatureUnit }).meta({ id: 'Units' });
export type Units = z.infer<typeof Units>;

export const Email = z.email().max(200);
export const Password = z.string().min(10).max(200);

export const SignIn = z.object({ email: Email, password: z.string().min(1).max(200) }).meta({ id: 'SignIn' });
export type SignIn = z.infer<typeof SignIn>;

export const Workshop = z
  .object({
    id: Id,
    name: Line,
    units: Units,
    requiredPulls: z.number().int().min(1).max(50),
    stepLimit: z.number().positive().max(10),
    riskLimit: z.number().positive().max(0.05),
    /** Highest mean overshoot that a raised gate hold may bring. */
    overshootLimitPct: z.number().min(0.5).max(30),
    /** What a proof promises: the share of all pulls inside the tolerance, and with which confidence. */
    coverageRatio: z.number().min(0.5).max(0.99),
    confidenceRatio: z.number().min(0.5).max(0.99),
    /** Whether a preset has to be proven before it is signed off. */
    signOffNeedsProof: z.boolean(),
    /** Whether the advice leans on earlier cars of the same build. */
    leansOnEarlierCars: z.boolean(),
    paperHeader: PaperHeader,
    revision: RecordRevision,
  })
  .meta({ id: 'Workshop' });
export type Workshop = z.infer<typeof Workshop>;
export const WorkshopChange = Workshop.omit({ id: true, revision: true }).partial();

export const Member = z
  .object({
    id: Id,
    name: Line,
    email: Email,
    role: Role,
    active: z.boolean(),
    revision: RecordRevision,
  })
  .meta({ id: 'Member' });
export type Member = z.infer<typeof Member>;
export const MemberNew = z.object({ name: Line, email: Email, role: Role, password: Password });
export const MemberChange = z.object({ name: Line, role: Role, active: z.boolean() }).partial();

/** Who is signed in, at which workshop, and how they read figures. */
const TourStep = z.number().int().min(0).max(20).nullable();

export const Me = z
  .object({
    member: Member,
    workshop: Workshop,
    units: Units,
    demo: z.boolean(),
    /** Step of the first tour that this person is at, from 0; null where it is over. */
    tourStep: TourStep,
  })
  .meta({ id: 'Me' });
export type Me = z.infer<typeof Me>;
export const MeChange = z
  .object({ units: Units, tourStep: TourStep })
  .partial()
  .refine((change) => Object.values(change).some((value) => value !== undefined), 'nothing to change');
export type MeChange = z.infer<typeof MeChange>;

/** What a fresh installation still needs before anybody can sign in. */
export const Setup = z.object({ needsFirstOwner: z.boolean(), demo: z.boolean() }).meta({ id: 'Setup' });
export type Setup = z.infer<typeof Setup>;
export const FirstOwner = z
  .object({
    code: z.string().min(6).max(40),
    workshopName: Line,
    name: Line,
    email: Email,
    password: Password,
  })
  .meta({ id: 'FirstOwner' });

export const Token = z
  .object({
    id: Id,
    name: Line,
    createdAt: Instant,
    lastUsedAt: Instant.nullable(),
    revokedAt: Instant.nullable(),
  })
  .meta({ id: 'Token' });
export type Token = z.infer<typeof Token>;
export const TokenNew = z.object({ name: Line });
/** The secret is shown once, here, and never again. */
export const TokenMade = Token.extend({ secret: z.string() }).meta({ id: 'TokenMade' });

export type TokenMade = z.infer<typeof TokenMade>;

export const Health = z
  .object({ status: z.enum(['ok', 'busy']), version: z.string(), database: z.enum(['sqlite', 'postgresql']) })
  .meta({ id: 'Health' });
