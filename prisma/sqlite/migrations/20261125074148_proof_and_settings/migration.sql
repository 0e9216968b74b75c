-- AlterTable
ALTER TABLE "Car" ADD COLUMN "compressorMap" JSONB;

-- AlterTable
ALTER TABLE "Pull" ADD COLUMN "correctionStrength" REAL;
ALTER TABLE "Pull" ADD COLUMN "gradientPct" REAL;
ALTER TABLE "Pull" ADD COLUMN "heldForS" REAL;
ALTER TABLE "Pull" ADD COLUMN "huntingAmplitudeKpa" REAL;
ALTER TABLE "Pull" ADD COLUMN "huntingDampingRatio" REAL;
ALTER TABLE "Pull" ADD COLUMN "huntingHz" REAL;
ALTER TABLE "Pull" ADD COLUMN "overrideOn" BOOLEAN;

-- AlterTable
ALTER TABLE "Workshop" ADD COLUMN "coverageRatio" REAL NOT NULL DEFAULT 0.9;
ALTER TABLE "Workshop" ADD COLUMN "confidenceRatio" REAL NOT NULL DEFAULT 0.95;
ALTER TABLE "Workshop" ADD COLUMN "overshootLimitPct" REAL NOT NULL DEFAULT 5;
ALTER TABLE "Workshop" ADD COLUMN "signOffNeedsProof" BOOLEAN NOT NULL DEFAULT false;
