-- DropIndex
DROP INDEX "Pull_logId_logPullIndex_key";

-- AlterTable
ALTER TABLE "Pull" ADD COLUMN "logVersion" INTEGER;

-- CreateTable
CREATE TABLE "LogVersion" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "logId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "codeVersion" TEXT NOT NULL,
    "options" JSONB NOT NULL,
    "recipeId" TEXT,
    "analysis" JSONB NOT NULL,
    "traces" JSONB NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "madeBy" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "LogVersion_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "LogVersion_logId_fkey" FOREIGN KEY ("logId") REFERENCES "Log" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ChannelRecipe" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "name" TEXT NOT NULL,
    "shapeHash" TEXT NOT NULL,
    "shape" JSONB NOT NULL,
    "reading" JSONB NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "ChannelRecipe_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- What was computed so far becomes the first version of each log, and the one that its pulls were taken from.
INSERT INTO "LogVersion" ("id", "workshopId", "logId", "number", "codeVersion", "options", "analysis", "traces", "madeBy", "madeAt")
SELECT "id", "workshopId", "id", 1, "analysisVersion", '{}', "analysis", "traces", "recordedBy", "recordedAt" FROM "Log";
UPDATE "Pull" SET "logVersion" = 1 WHERE "logId" IS NOT NULL;

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Log" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "tuningSessionId" TEXT NOT NULL,
    "fileName" TEXT NOT NULL,
    "byteCount" INTEGER NOT NULL,
    "sha256" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "recordedBy" TEXT NOT NULL,
    "recordedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "Log_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Log_tuningSessionId_fkey" FOREIGN KEY ("tuningSessionId") REFERENCES "TuningSession" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Log" ("byteCount", "fileName", "id", "recordedAt", "recordedBy", "sha256", "tuningSessionId", "workshopId") SELECT "byteCount", "fileName", "id", "recordedAt", "recordedBy", "sha256", "tuningSessionId", "workshopId" FROM "Log";
DROP TABLE "Log";
ALTER TABLE "new_Log" RENAME TO "Log";
CREATE INDEX "Log_workshopId_sha256_idx" ON "Log"("workshopId", "sha256");
CREATE UNIQUE INDEX "Log_tuningSessionId_sha256_key" ON "Log"("tuningSessionId", "sha256");
CREATE TABLE "new_Workshop" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "pressureUnit" TEXT NOT NULL DEFAULT 'kPa',
    "temperatureUnit" TEXT NOT NULL DEFAULT 'C',
    "requiredPulls" INTEGER NOT NULL DEFAULT 3,
    "stepLimit" REAL NOT NULL DEFAULT 10,
    "riskLimit" REAL NOT NULL DEFAULT 0.02,
    "coverageRatio" REAL NOT NULL DEFAULT 0.9,
    "confidenceRatio" REAL NOT NULL DEFAULT 0.95,
    "overshootLimitPct" REAL NOT NULL DEFAULT 5,
    "signOffNeedsProof" BOOLEAN NOT NULL DEFAULT false,
    "lastVisitNumber" INTEGER NOT NULL DEFAULT 0,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "logSettings" JSONB,
    "logSettingsRevision" INTEGER NOT NULL DEFAULT 1,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);
INSERT INTO "new_Workshop" ("confidenceRatio", "coverageRatio", "createdAt", "id", "isDemo", "lastVisitNumber", "name", "overshootLimitPct", "pressureUnit", "requiredPulls", "revision", "riskLimit", "signOffNeedsProof", "stepLimit", "temperatureUnit") SELECT "confidenceRatio", "coverageRatio", "createdAt", "id", "isDemo", "lastVisitNumber", "name", "overshootLimitPct", "pressureUnit", "requiredPulls", "revision", "riskLimit", "signOffNeedsProof", "stepLimit", "temperatureUnit" FROM "Workshop";
DROP TABLE "Workshop";
ALTER TABLE "new_Workshop" RENAME TO "Workshop";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "LogVersion_workshopId_idx" ON "LogVersion"("workshopId");

-- CreateIndex
CREATE UNIQUE INDEX "LogVersion_logId_number_key" ON "LogVersion"("logId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "ChannelRecipe_workshopId_shapeHash_key" ON "ChannelRecipe"("workshopId", "shapeHash");

-- CreateIndex
CREATE UNIQUE INDEX "Pull_logId_logVersion_logPullIndex_key" ON "Pull"("logId", "logVersion", "logPullIndex");
