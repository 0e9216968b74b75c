import {
  emptyPaperHeader,
  PaperHeader,
  type Me,
  type Member,
  type PressureUnit,
  type Role,
  type TemperatureUnit,
  type Token,
  type Units,
  type Workshop,
} from '@pullbook/contracts';
import type * as rows from '@pullbook/database';
import type { z } from 'zod';

interface UnitColumns {
  readonly pressureUnit: string;
  readonly temperatureUnit: string;
}

function presentUnits(row: UnitColumns): Units {
  return {
    pressure: row.pressureUnit as z.infer<typeof PressureUnit>,
    temperature: row.temperatureUnit as z.infer<typeof TemperatureUnit>,
  };
}

/** A workshop as it goes out. */
export function presentWorkshop(row: rows.Workshop): Workshop {
  return {
    id: row.id,
    name: row.name,
    units: presentUnits(row),
    requiredPulls: row.requiredPulls,
    stepLimit: row.stepLimit,
    riskLimit: row.riskLimit,
    overshootLimitPct: row.overshootLimitPct,
    coverageRatio: row.coverageRatio,
    confidenceRatio: row.confidenceRatio,
    signOffNeedsProof: row.signOffNeedsProof,
    leansOnEarlierCars: row.leansOnEarlierCars,
    paperHeader: presentPaperHeader(row),
    revision: row.revision,
  };
}

/** The workshop's paper header; empty until the owner fills it in. */
export function presentPaperHeader(row: Pick<rows.Workshop, 'paperHeader'>): PaperHeader {
  return row.paperHeader === null ? emptyPaperHeader : PaperHeader.parse(row.paperHeader);
}

/** A member as it goes out: never with the password's hash. */
export function presentMember(row: rows.Member): Member {
  return {
    id: row.id,
    name: row.name,
    email: row.email,
    role: row.role as Role,
    active: row.active,
    revision: row.revision,
  };
}

/** Who is signed in, and where. */
export function presentMe(row: rows.Member & { workshop: rows.Workshop }): Me {
  return {
    member: presentMember(row),
    workshop: presentWorkshop(row.workshop),
    units: presentUnits(row),
    demo: row.workshop.isDemo,
    tourStep: row.tourStep,
  };
}

/** A token as it goes out: never with its secret. */
export function presentToken(row: rows.ApiToken): z.infer<typeof Token> {
  return {
    id: row.id,
    name: row.name,
    createdAt: row.createdAt.toISOString(),
    lastUsedAt: row.lastUsedAt?.toISOString() ?? null,
    revokedAt: row.revokedAt?.toISOString() ?? null,
  };
}
